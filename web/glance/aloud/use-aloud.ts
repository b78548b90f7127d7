import { createEffect, createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import { LOCALE, type Language } from '../../words/language.ts';
import type { Aloud } from './aloud-text.ts';

/** `cannot`: this browser has no voice at all; `no-voice`: none of this language. */
export type AloudState = 'off' | 'on' | 'cannot' | 'no-voice';

export interface ReadingAloud {
  readonly state: Accessor<AloudState>;
  /** Only ever by a tap: browsers speak to nobody who did not ask, and so does Glance. */
  readonly toggle: () => void;
}

/** Reads out what is shown, each thing once, from the moment it is asked for. What is newer cuts off what is older. */
export function useAloud(says: Accessor<Aloud | null>, language: Accessor<Language>): ReadingAloud {
  const synthesis = (globalThis as Partial<typeof globalThis>).speechSynthesis;
  if (synthesis === undefined) return { state: () => 'cannot', toggle: () => {} };
  const [asked, setAsked] = createSignal(false);
  const [voices, setVoices] = createSignal(synthesis.getVoices());
  const heard = (): void => void setVoices(synthesis.getVoices());
  synthesis.addEventListener('voiceschanged', heard);
  onCleanup(() => {
    synthesis.removeEventListener('voiceschanged', heard);
    synthesis.cancel();
  });
  const voice = createMemo(() => voices().find(({ lang }) => lang.toLowerCase().startsWith(language())) ?? null);
  // Some browsers name no voices and have them all the same.
  const state = createMemo((): AloudState => (!asked() ? 'off' : voices().length > 0 && voice() === null ? 'no-voice' : 'on'));
  const now = createMemo(says, null, { equals: (a, b) => a?.of === b?.of && a?.text === b?.text });
  createEffect(() => {
    const aloud = now();
    synthesis.cancel();
    if (state() !== 'on' || aloud === null) return;
    const utterance = new SpeechSynthesisUtterance(aloud.text);
    utterance.lang = LOCALE[language()];
    utterance.voice = voice();
    synthesis.speak(utterance);
  });
  return { state, toggle: () => void setAsked(!asked()) };
}
