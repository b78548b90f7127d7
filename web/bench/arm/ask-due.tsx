import { Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import { useDesk } from '../../desk/desk.ts';

/** When the arm is to be asked about: the usual answer is one tap, for any other the whole question is opened. */
export function AskDue(props: { readonly session: SessionView; readonly onMore: () => void }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.arm;
  const due = () => props.session.armTalk.questionDue && props.session.closedAtMs === null && props.session.armCare.kind !== 'pain-reported';
  /** A refusal is said where the whole question is. */
  const nothing = async () => {
    const place = await desk.say('arm', { kind: 'arm-reported', session: props.session.id, from: 'bench', said: 'nothing', areas: [] });
    if (place === null) props.onMore();
  };
  return (
    <Show when={due()}>
      <div class="row ask-due" role="group" aria-label={say().ask}>
        <button type="button" onClick={() => void nothing()}>{say().askedNothing}</button>
        <button type="button" onClick={() => props.onMore()}>{say().askedMore}</button>
      </div>
    </Show>
  );
}
