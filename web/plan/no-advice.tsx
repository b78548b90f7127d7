import type { ArmCare } from '../../core/facts/care-view.ts';
import type { SessionView } from '../../core/facts/views.ts';
import { useDesk } from '../desk/desk.ts';
import { reportWords } from '../words/arm-words.ts';
import { isoDayText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';

/** In place of everything that would have an athlete throw, for as long as pain or soreness stands. */
export function MedicalSentence(props: { readonly session: SessionView; readonly report: Extract<ArmCare, { kind: 'pain-reported' }>['report'] }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.plan.frame.care;
  return (
    <section class="medical" role="alert" aria-labelledby="medical-title">
      <h2 id="medical-title">{props.report.said === 'sore' ? say().title : speech().words.arm.stop}</h2>
      <p class="report">{reportWords(props.report, props.session, speech())}</p>
      <p>{speech().words.bench.session.careText}</p>
      <p>{say().stops} <a href={`/bench/${encodeURIComponent(desk.mound)}`}>{say().answer}</a></p>
    </section>
  );
}

/** Above a plan that can be made but not thrown today. */
export function NotToday(props: { readonly care: ArmCare }) {
  const speech = useSpeech();
  const said = () => {
    const { care } = speech().words.plan.frame;
    switch (props.care.kind) {
      case 'rest-due': return care.rest(isoDayText(props.care.until.day, speech().language));
      case 'reached': return care.reached(props.care.moundThrows, props.care.dayMost);
      default: return null;
    }
  };
  return <p class="not-today" role="status">{said()}</p>;
}
