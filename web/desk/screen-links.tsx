import { For, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { useDesk } from './desk.ts';

/** The ways to other screens of this mound, and to the trials of whoever has it. */
export function ScreenLinks(props: { readonly screens: readonly ('bench' | 'plan' | 'wall' | 'glance')[]; readonly class?: string }) {
  const desk = useDesk();
  const words = useWords();
  return (
    <>
      <For each={props.screens}>{(screen) => <a class={props.class} href={`/${screen}/${encodeURIComponent(desk.mound)}`}>{words().start.screens[screen]}</a>}</For>
      <Show when={desk.session()}>{(session) => <a class={props.class} href={`/trials/${encodeURIComponent(session().athlete.id)}`}>{words().trials.frame.onTrials}</a>}</Show>
    </>
  );
}
