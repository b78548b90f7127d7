import { createEffect, on, onCleanup, Match, Switch } from 'solid-js';
import type { SessionView } from '../../../../core/facts/views.ts';
import { useWords } from '../../../words/use-words.tsx';
import { Answer } from '../../../desk/answer.tsx';
import { ACTS_KEPT } from '../../../desk/last-acts.ts';
import { ActList } from '../../acts/act-list.tsx';
import { AskArm } from '../../arm/ask-arm.tsx';
import type { OneTap } from '../one-tap.ts';
import type { OpenSheet, Sheet } from '../open-sheet.ts';
import { NoteSheet } from './note-sheet.tsx';
import { ThrowSheet } from './throw-sheet.tsx';
import { TrialSheet } from './trial-sheet.tsx';

/** What was opened from the row of acts, right above it. The keyboard goes on inside it, and into the field where there is one to write in. */
export function OpenedSheet(props: { readonly sheet: Sheet; readonly session: SessionView; readonly open: OpenSheet; readonly oneTap: OneTap; readonly onGrip: () => void }) {
  const words = useWords();
  let room!: HTMLDivElement;
  let shown = props.sheet;
  createEffect(on(() => props.sheet, (sheet) => {
    shown = sheet;
    ((sheet === 'note' ? room.querySelector<HTMLElement>('input[type="text"]') : null) ?? room).focus();
  }));
  // Whoever was inside goes on from the act that opened it.
  onCleanup(() => {
    const act = document.querySelector<HTMLElement>(`.acts [data-sheet='${shown}']`);
    if (room.contains(document.activeElement)) queueMicrotask(() => act?.focus());
  });
  return (
    <div id="dock-sheet" class="sheet" ref={room} role="group" tabindex="-1" aria-label={words().bench.dock.actWhole[props.sheet]}>
      <Switch>
        <Match when={props.sheet === 'trial'}><TrialSheet session={props.session} oneTap={props.oneTap} onDone={props.open.close} onGrip={() => { props.open.close(); props.onGrip(); }} /></Match>
        <Match when={props.sheet === 'throw'}><ThrowSheet session={props.session} open={props.open} /></Match>
        <Match when={props.sheet === 'arm'}><AskArm session={props.session} /></Match>
        <Match when={props.sheet === 'acts'}><Answer corner="acts" /><ActList most={ACTS_KEPT} /></Match>
        <Match when={props.sheet === 'note'}><NoteSheet session={props.session} open={props.open} /></Match>
      </Switch>
    </div>
  );
}
