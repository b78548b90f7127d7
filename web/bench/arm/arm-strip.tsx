import { createMemo, For, Show } from 'solid-js';
import { mayThrow } from '../../../core/coaching/arm-care.ts';
import type { MoundDay } from '../../../core/facts/wire.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { hourText, isoDayText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { DayPlan } from './day-plan.tsx';
import { AskArm } from './ask-arm.tsx';
import { AskDue } from './ask-due.tsx';
import { useArm, type ArmState } from './arm-state.ts';
import { careGrounds, careWarnings, nextDayWords } from './care-words.ts';

/** Today's throws against the guideline: the count and every warning in the open, the grounds one tap away. It never says that an arm is fine. */
export function ArmStrip(props: { readonly session: SessionView }) {
  const arm = useArm();
  return <Show when={arm()}>{(state) => <Strip state={state()} session={props.session} />}</Show>;
}

function Strip(props: { readonly state: ArmState; readonly session: SessionView }) {
  const speech = useSpeech();
  const say = () => speech().words.bench.arm;
  const care = () => props.state.care;
  const warnings = createMemo(() => careWarnings(props.state, props.session, speech()));
  const next = createMemo(() => nextDayWords(props.state, speech()));
  const left = () => {
    const now = care();
    return mayThrow(now) ? say().left(now.left, props.session.plannedThrows !== null) : null;
  };
  const answer = () => props.session.armTalk.lastAnswer;
  let strip!: HTMLDetailsElement;
  const openAtQuestion = () => {
    strip.open = true;
    strip.querySelector<HTMLElement>('.arm-ask input')?.focus();
  };
  return (
    <>
      <details class="arm-strip" ref={strip} data-care={care().kind}>
        <summary>
          <span class="arm-count">{say().title}: <strong>{say().count(care().moundThrows, care().dayMost)}</strong></span>
          <For each={warnings()}>{(warning) => <span class="arm-warning">{warning}</span>}</For>
          <Show when={next()?.rest}><span class="arm-next">{next()!.said}</span></Show>
        </summary>
        <div class="arm-more">
          <h3>{say().byKind}</h3>
          <ul class="arm-kinds"><For each={care().today} fallback={<li>{say().nothing}</li>}>{({ stage, effort, count }) => <li>{say().kind(speech().words.trade.stage[stage], speech().words.trade.effort[effort], count)}</li>}</For></ul>
          <Show when={left()}>{(words) => <p>{words()}</p>}</Show>
          <Show when={props.session.closedAtMs === null}><DayPlan session={props.session} /></Show>
          <Show when={props.state.days.length > 0}>
            <h3>{say().lastDays}</h3>
            <ul><For each={props.state.days}>{(day) => <li>{dayLine(day)}</li>}</For></ul>
          </Show>
          <Show when={next()?.rest === false}><p>{next()!.said}</p></Show>
          <For each={careGrounds(props.state, speech())}>{(ground) => <p class="quiet">{ground}</p>}</For>
          <Show when={answer()}>{(said) => <p>{say().answered(hourText(said().atMs, props.session.timeZone, speech().language), say().answers[said().answer], said().words)}</p>}</Show>
          <AskArm session={props.session} />
        </div>
      </details>
      <AskDue session={props.session} onMore={openAtQuestion} />
    </>
  );

  function dayLine({ day, mound, throws }: MoundDay): string {
    const count = (some: MoundDay['throws']) => some.reduce((sum, kind) => sum + kind.count, 0);
    return say().day(isoDayText(day, speech().language), mound, count(throws.filter(({ stage }) => stage === 'mound' || stage === 'hitters')), count(throws));
  }
}
