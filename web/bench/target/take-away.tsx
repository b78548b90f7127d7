import { createSignal, Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useDesk } from '../../desk/desk.ts';
import { TextField } from '../../desk/text-field.tsx';
import { useWords } from '../../words/use-words.tsx';

/** Takes the target of the present stage away, with the reason that the log keeps. */
export function TakeAway(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.target;
  const [reason, setReason] = createSignal<string | null>(null);
  const stage = () => words().trade.stage[props.session.stage];
  const takeAway = async () => {
    const why = reason()?.trim() ?? '';
    if (why === '') return;
    const stored = await desk.say('target', { kind: 'zone-removed', session: props.session.id, reason: why });
    if (stored !== null) setReason(null);
  };
  return (
    <Show when={reason() !== null} fallback={<button type="button" class="plain" onClick={() => setReason('')}>{say().takeAway(stage())}</button>}>
      <form class="take-away" noValidate onSubmit={(event) => { event.preventDefault(); void takeAway(); }}>
        <p>{say().takeAwayMeans(stage())}</p>
        <TextField label={say().takeAwayWhy} text={reason()!} longest={200} onText={setReason} />
        <div class="row">
          <button type="submit" class="main" disabled={reason()!.trim() === ''}>{say().takeAwayYes}</button>
          <button type="button" onClick={() => setReason(null)}>{words().bench.frame.keep}</button>
        </div>
      </form>
    </Show>
  );
}
