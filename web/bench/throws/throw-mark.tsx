import { Show } from 'solid-js';
import type { ThrowView } from '../../../core/facts/views.ts';

/** Filled on target, hollow for a miss; struck out when it does not count. Only repeats what the words beside it say. */
export function ThrowMark(props: { readonly thrown: ThrowView }) {
  const judged = () => !props.thrown.fastball && props.thrown.miss !== null;
  return (
    <Show when={judged() || props.thrown.excluded !== null}>
      <svg class="throw-mark" viewBox="-8 -8 16 16" aria-hidden="true">
        <Show when={judged()}><circle r="5" classList={{ filled: props.thrown.miss!.onTarget }} /></Show>
        <Show when={props.thrown.excluded !== null}><path d="M-6 6 L6 -6" /></Show>
      </svg>
    </Show>
  );
}
