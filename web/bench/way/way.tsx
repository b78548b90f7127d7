import { createMemo, For, Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { STAGES, type Stage } from '../../../core/facts/vocabulary.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { useArm } from '../arm/arm-state.ts';
import { Answer } from '../../desk/answer.tsx';
import { GateFields } from './gate-fields.tsx';
import { gateHistory, gateMark, gateSentences } from './gate-words.ts';
import { Steps } from './steps.tsx';

/** Catch play, long toss, flat ground, mound, hitters: how the present trial stands at the gate of each, and the taps on and back. */
export function Way(props: { readonly session: SessionView }) {
  const speech = useSpeech();
  const say = () => speech().words.bench.way;
  return (
    <section class="way" aria-labelledby="way-title">
      <h3 id="way-title">{say().title}</h3>
      <p class="quiet small">{props.session.trial === null ? say().noTrial : say().gathers}</p>
      <ol class="way-stages"><For each={STAGES}>{(stage) => <WayStage stage={stage} session={props.session} />}</For></ol>
      <Answer corner="way" />
    </section>
  );
}

/** A stage lives as long as the session, so that what was opened stays open whatever is thrown meanwhile. */
function WayStage(props: { readonly stage: Stage; readonly session: SessionView }) {
  const arm = useArm();
  const speech = useSpeech();
  const say = () => speech().words.bench.way;
  const progress = createMemo(() => props.session.progress.stages.find(({ stage }) => stage === props.stage)!);
  const isNow = () => props.session.stage === props.stage;
  const open = () => props.session.closedAtMs === null;
  const history = createMemo(() => gateHistory(progress(), props.session.timeZone, speech()));
  return (
    <li aria-current={isNow() ? 'step' : undefined} data-gate={progress().work?.state.kind}>
      <details open={isNow()}>
        <summary>
          <span class="way-stage">{speech().words.trade.stage[props.stage]}</span>
          <Show when={isNow()}> <span class="now">{say().now}</span></Show>
          <span class="way-mark">{gateMark(progress(), speech())}</span>
        </summary>
        <div class="way-more">
          <For each={gateSentences(progress(), props.session.timeZone, speech())}>{(sentence) => <p>{sentence}</p>}</For>
          <Show when={progress().work !== null}>
            <ul class="way-history" aria-label={say().history}><For each={history()} fallback={<li>{say().noHistory}</li>}>{(line) => <li>{line}</li>}</For></ul>
          </Show>
          <Show when={open() && isNow() && arm()?.pain === null}><Steps session={props.session} /></Show>
          <Show when={open()}><GateFields session={props.session} stage={props.stage} gate={progress().gate} /></Show>
        </div>
      </details>
    </li>
  );
}
