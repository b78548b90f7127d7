import { createMemo, Show } from 'solid-js';
import { useDesk, type Corner } from '../../desk/desk.ts';
import { useWords } from '../../words/use-words.tsx';

/** What has not reached the server, wherever on Bench it was said: it can be sent again from here without looking for it. */
export function Unsent() {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.frame;
  const unsent = createMemo(() => desk.unsent());
  const corners = (): readonly Corner[] => [...new Set(unsent().map(({ corner }) => corner))];
  const again = () => { for (const corner of corners()) void desk.again(corner); };
  return (
    <Show when={unsent().length > 0}>
      <div class="unsent refusal" role="group" aria-label={say().refused}>
        <p>{say().unsent(unsent().length)}</p>
        <button type="button" class="main" onClick={again}>{say().sendAgain}</button>
      </div>
    </Show>
  );
}
