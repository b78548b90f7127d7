import { createEffect, createSignal, on, onCleanup, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { useDesk, type Corner } from './desk.ts';
import { NO_ANSWER } from '../live/say.ts';
import { RefusalWords } from '../standing/refusal.tsx';

/** Quicker than this an answer needs no word, and nothing on the screen moves. */
const SLOW_MS = 400;

/** What the server said to the last statement of this corner: still waiting, or refused and why. */
export function Answer(props: { readonly corner: Corner }) {
  const desk = useDesk();
  const words = useWords();
  const slow = slowly(() => desk.waiting(props.corner));
  return (
    <div class="answer" aria-live="polite">
      <Show when={slow()}><span class="waiting">{words().bench.frame.waiting}</span></Show>
      <Show when={desk.refusal(props.corner)}>
        {(refusal) => (
          <p class="refusal">
            <strong>{words().bench.frame.refused}</strong> <Show when={refusal().code !== NO_ANSWER} fallback={words().bench.frame.unreachable}><RefusalWords refusal={refusal()} /></Show>
            <Show when={refusal().code === NO_ANSWER} fallback={<button type="button" class="plain" onClick={() => desk.dismiss(props.corner)}>{words().bench.frame.dismiss}</button>}>
              <span class="row">
                <button type="button" onClick={() => void desk.again(props.corner)}>{words().bench.frame.sendAgain}</button>
                <button type="button" onClick={() => desk.dismiss(props.corner)}>{words().bench.frame.letGo}</button>
              </span>
            </Show>
          </p>
        )}
      </Show>
    </div>
  );
}

/** True once something has been so for a while; false as soon as it is not. */
function slowly(now: () => boolean): () => boolean {
  const [held, setHeld] = createSignal(false);
  let timer: ReturnType<typeof setTimeout> | undefined;
  createEffect(on(now, (so) => {
    clearTimeout(timer);
    if (so) timer = setTimeout(() => setHeld(true), SLOW_MS);
    else setHeld(false);
  }));
  onCleanup(() => clearTimeout(timer));
  return held;
}
