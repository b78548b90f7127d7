import { For, Show } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { useWords } from '../words/use-words.tsx';
import { useVoice } from './voice.ts';

const FEELS = ['nothing', 'tired', 'sore', 'pain'] as const;

/** One tap says how the arm feels, another how the grip does. Pain is said at once; where it is, is asked afterwards. */
export function ArmQuestion(props: { readonly session: SessionView }) {
  const voice = useVoice();
  const words = useWords();
  const say = () => words().glance;
  const said = () => {
    const { lastReport, questionDue } = props.session.armTalk;
    return questionDue || lastReport?.from !== 'glance' ? null : lastReport.said;
  };
  const report = (feels: (typeof FEELS)[number]) => void voice.say({ kind: 'arm-reported', session: props.session.id, from: 'glance', said: feels, areas: [] });
  const comfort = (comfortable: boolean) => void voice.say({ kind: 'comfort-said', session: props.session.id, from: 'glance', comfortable });
  return (
    <section class="glance-arm" data-due={props.session.armTalk.questionDue ? 'yes' : 'no'}>
      <div class="glance-asked" role="group" aria-labelledby="glance-feel">
        <h2 id="glance-feel">{say().feel}</h2>
        <For each={FEELS}>{(feels) => <button type="button" aria-pressed={said() === feels} onClick={() => report(feels)}>{say().feels[feels]}</button>}</For>
      </div>
      <Show when={props.session.trial}>
        <div class="glance-asked two" role="group" aria-labelledby="glance-grip">
          <h2 id="glance-grip">{say().grip}</h2>
          <button type="button" aria-pressed={props.session.comfort?.comfortable === true} onClick={() => comfort(true)}>{say().grips.yes}</button>
          <button type="button" aria-pressed={props.session.comfort?.comfortable === false} onClick={() => comfort(false)}>{say().grips.no}</button>
        </div>
      </Show>
      <Show when={voice.failed()}><p class="glance-failed" role="alert">{say().notSaid}</p></Show>
    </section>
  );
}
