import { Show } from 'solid-js';
import type { Unheard } from '../live/recorded.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { useWords } from '../words/use-words.tsx';

/** Why there is nothing to show and, where asking could help, the way to ask again. */
export function Unanswered(props: { readonly unheard: Unheard; readonly again: () => void }) {
  const words = useWords();
  const refusal = () => (props.unheard.kind === 'refused' ? props.unheard : null);
  /** Asking again finds nothing else. */
  const nobodyHasIt = () => refusal()?.code.startsWith('unknown-') === true;
  return (
    <section class="teaching" role="alert">
      <p><strong><Show when={refusal()} fallback={words().playback.unreachable}>{(refused) => <RefusalWords refusal={refused()} />}</Show></strong></p>
      <Show when={!nobodyHasIt()}><button type="button" onClick={() => props.again()}>{words().playback.again}</button></Show>
    </section>
  );
}
