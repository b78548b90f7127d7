import { createUniqueId } from 'solid-js';
import type { Decision } from '../../../core/facts/decision-says.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import { decisionBeforeS } from '../../../core/flight/decision-point.ts';
import { millisecondsText } from '../../words/numbers.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { Answer } from '../../desk/answer.tsx';
import { useDesk } from '../../desk/desk.ts';
import { Choice } from '../fields/choice.tsx';
import { createOnItsWay } from '../../desk/on-its-way.ts';

const STEP_MS = 5;
const inMs = (seconds: number): number => Math.round(seconds * 1000);

/** Where the gap of this session's throws is told. The slider is said when it is let go, not while it is under the finger. */
export function DecisionChoice(props: { readonly session: SessionView }) {
  const desk = useDesk();
  const speech = useSpeech();
  const id = createUniqueId();
  const say = () => speech().words.bench.session;
  const underway = createOnItsWay<Decision>(() => desk.view().place);
  const now = (): Decision => underway.value() ?? props.session.decision;
  const set = (decision: Decision) => void underway.send(decision, desk.say('decision', { kind: 'decision-set', session: props.session.id, ...decision }));
  const under = (slider: HTMLInputElement): Decision => ({ ...now(), beforeS: Number(slider.value) / 1000 });
  const said = () => millisecondsText(now().beforeS, speech());
  return (
    <div class="decision-choice">
      <Choice legend={say().decision} options={['same-time', 'same-distance'] as const} say={(basis) => speech().words.asked.gapLine.basis[basis]} chosen={now().basis} onChoose={(basis) => set({ ...now(), basis })} />
      <div class="field wide angle">
        <label for={id}>{say().decisionBefore}</label>
        <output for={id}>{said()}</output>
        <input id={id} type="range" min={inMs(decisionBeforeS.least)} max={inMs(decisionBeforeS.most)} step={STEP_MS} value={inMs(now().beforeS)} aria-valuetext={said()}
          onInput={(event) => underway.hold(under(event.currentTarget))} onChange={(event) => set(under(event.currentTarget))} />
      </div>
      <p class="quiet">{say().decisionMeans}</p>
      <Answer corner="decision" />
    </div>
  );
}
