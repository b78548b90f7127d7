import { For, Show } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { hourText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import { useVoice } from './voice.ts';

const FEELS = ['nothing', 'tired', 'sore', 'pain'] as const;

/** One tap says how the arm feels, another how the grip does. Pain is said at once; where it is, is asked afterwards. */
export function ArmQuestion(props: { readonly session: SessionView }) {
  const voice = useVoice();
  const speech = useSpeech();
  const say = () => speech().words.glance;
  const stored = (said: string, atMs: number) => say().stored(said, hourText(atMs, props.session.timeZone, speech().language));
  const said = () => {
    const { lastReport, questionDue } = props.session.armTalk;
    return questionDue || lastReport?.from !== 'glance' ? null : lastReport;
  };
  const report = (feels: (typeof FEELS)[number]) => void voice.say({ kind: 'arm-reported', session: props.session.id, from: 'glance', said: feels, areas: [] });
  const comfort = (comfortable: boolean) => void voice.say({ kind: 'comfort-said', session: props.session.id, from: 'glance', comfortable });
  return (
    <section class="glance-arm" data-due={props.session.armTalk.questionDue ? 'yes' : 'no'}>
      <div class="glance-asked" role="group" aria-labelledby="glance-feel">
        <Question id="glance-feel" asks={say().feel} stored={answered((report) => stored(speech().words.arm.said[report.said], report.atMs), said())} />
        <For each={FEELS}>{(feels) => <button type="button" aria-pressed={said()?.said === feels} onClick={() => report(feels)}>{say().feels[feels]}</button>}</For>
      </div>
      <Show when={props.session.trial}>
        <div class="glance-asked two" role="group" aria-labelledby="glance-grip">
          <Question id="glance-grip" asks={say().grip} stored={answered(({ comfortable, atMs }) => stored(say().comfort[comfortable ? 'yes' : 'no'], atMs), props.session.comfort)} />
          <button type="button" aria-pressed={props.session.comfort?.comfortable === true} onClick={() => comfort(true)}>{say().grips.yes}</button>
          <button type="button" aria-pressed={props.session.comfort?.comfortable === false} onClick={() => comfort(false)}>{say().grips.no}</button>
        </div>
      </Show>
      <Show when={voice.failed()}><p class="glance-failed" role="alert">{say().notSaid}</p></Show>
    </section>
  );
}

/** What is asked, and once it was answered what the server has stored of it. */
function Question(props: { readonly id: string; readonly asks: string; readonly stored: string | null }) {
  return (
    <>
      <h2 id={props.id} classList={{ unseen: props.stored !== null }}>{props.asks}</h2>
      <p class="glance-stored" role="status">{props.stored}</p>
    </>
  );
}

function answered<T>(say: (answer: T) => string, answer: T | null): string | null {
  return answer === null ? null : say(answer);
}
