import { Show } from 'solid-js';
import type { ThrowView } from '../../../core/facts/views.ts';

/** Filled on target, hollow for a miss. Only repeats what the words beside it say. */
export function ThrowMark(props: { readonly thrown: ThrowView }) {
  const judged = () => !props.thrown.fastball && props.thrown.miss !== null;
  return (
    <Show when={judged()}>
      <svg class="throw-mark" viewBox="-8 -8 16 16" aria-hidden="true"><circle r="5" classList={{ filled: props.thrown.miss!.onTarget }} /></svg>
    </Show>
  );
}
