import { createSignal, type Accessor } from 'solid-js';
import { rememberSetting } from './asked-for.ts';
import { keepChoice, keptChoice } from './kept.ts';
import { oneOf } from './settings.ts';

/** A setting that the viewer chooses on the screen or in the address, and that this device keeps. */
export interface ChosenHere<T extends string> {
  /** Null where nobody chose. */
  readonly chosen: Accessor<T | null>;
  readonly choose: (value: T | null) => void;
}

/** @param asked what the address says; it is kept as if it had been chosen on the screen */
export function createChosenHere<T extends string>(name: string, choices: readonly T[], asked: T | null): ChosenHere<T> {
  if (asked !== null) keepChoice(name, asked);
  const [chosen, setChosen] = createSignal<T | null>(asked ?? oneOf(keptChoice(name), choices));
  return {
    chosen,
    choose: (value) => {
      setChosen(() => value);
      keepChoice(name, value);
      rememberSetting(name, value);
    },
  };
}
