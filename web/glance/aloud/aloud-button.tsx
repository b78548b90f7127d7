import { Show } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';
import type { ReadingAloud } from './use-aloud.ts';

/** Chosen by a tap, put away by another. */
export function AloudButton(props: { readonly aloud: ReadingAloud }) {
  const words = useWords();
  const isOn = () => props.aloud.state() === 'on' || props.aloud.state() === 'no-voice';
  return (
    <Show when={props.aloud.state() !== 'cannot'}>
      <button type="button" class="glance-aloud" title={words().glance.aloud} aria-label={words().glance.aloud} aria-pressed={isOn()} onClick={() => props.aloud.toggle()}>
        <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M4 9.5v5h3.5L12 18.5v-13L7.5 9.5z" /><path class="glance-waves" d="M15 9.2a4 4 0 0 1 0 5.6M17.6 6.6a7.6 7.6 0 0 1 0 10.8" /></svg>
      </button>
    </Show>
  );
}
