import { For, Show } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';

/** The other open sessions: one tap and the next throw is theirs. With two athletes that is all it takes to alternate. */
export function PassMound() {
  const desk = useDesk();
  const words = useWords();
  const others = () => desk.view().openSessions.filter(({ active }) => !active);
  return (
    <Show when={others().length > 0}>
      <div class="pass" role="group" aria-label={words().bench.frame.passMound}>
        <For each={others()}>
          {({ id, athleteName }) => <button type="button" onClick={() => void desk.say('mound', { kind: 'mound-passed', session: id })}>{words().bench.frame.passTo(athleteName)}</button>}
        </For>
      </div>
    </Show>
  );
}
