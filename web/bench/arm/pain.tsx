import { createSignal, Show } from 'solid-js';
import type { ArmReport } from '../../../core/facts/care-view.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { reportWords } from '../../words/arm-words.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';
import { TextField } from '../../desk/text-field.tsx';
import { useArm } from './arm-state.ts';

const ANSWERS = ['professional-looked', 'reported-by-mistake'] as const;

/** Reported pain, over everything else on Bench until somebody has answered it. */
export function PainStands(props: { readonly session: SessionView }) {
  const arm = useArm();
  return <Show when={arm()?.pain}>{(report) => <Banner session={props.session} report={report()} />}</Show>;
}

function Banner(props: { readonly session: SessionView; readonly report: ArmReport }) {
  const speech = useSpeech();
  const say = () => speech().words.bench.arm;
  const [answering, setAnswering] = createSignal(false);
  return (
    <section class="pain" role="alert" data-pain={props.report.said}>
      <p><strong>{speech().words.arm.stop}.</strong> {say().pain}</p>
      <p class="quiet">{reportWords(props.report, props.session, speech())}</p>
      <Show when={answering()} fallback={<button type="button" onClick={() => setAnswering(true)}>{say().answer}</button>}>
        <AnswerForm session={props.session} onBack={() => setAnswering(false)} />
      </Show>
    </section>
  );
}

function AnswerForm(props: { readonly session: SessionView; readonly onBack: () => void }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.arm;
  const [answer, setAnswer] = createSignal<(typeof ANSWERS)[number]>('professional-looked');
  const [words, setWords] = createSignal('');
  const save = () => void desk.say('pain', { kind: 'pain-answered', session: props.session.id, answer: answer(), words: words().trim() });
  return (
    <form class="pain-answer" onSubmit={(event) => { event.preventDefault(); if (words().trim() !== '') save(); }}>
      <p>{say().answerIs}</p>
      <Choice legend={say().answerHow} options={ANSWERS} say={(one) => say().answers[one]} chosen={answer()} onChoose={setAnswer} />
      <TextField label={say().answerWords[answer()]} text={words()} longest={200} onText={setWords} />
      <Answer corner="pain" />
      <div class="row">
        <button type="submit" disabled={words().trim() === ''}>{say().answerSave}</button>
        <button type="button" class="plain" onClick={() => props.onBack()}>{say().answerLater}</button>
      </div>
    </form>
  );
}
