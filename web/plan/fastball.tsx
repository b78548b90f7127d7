import { Show } from 'solid-js';
import { EFFICIENCY_HIGH, EFFICIENCY_LOW, type FastballEfficiency } from '../../core/coaching/fastball-efficiency.ts';
import type { BaselineView, SessionView } from '../../core/facts/views.ts';
import { correctedMad } from '../../core/statistics/spread.ts';
import { drawEfficiencyScale } from '../charts/efficiency-scale.ts';
import { Drawn } from '../wall/drawn.tsx';
import { dateText } from '../words/moments.ts';
import { movementText, speedText } from '../words/numbers.ts';
import { useSpeech } from '../words/use-words.tsx';
import { efficiencyWords } from './reason-words.ts';

const TEXT_PX = 14;

/** The athlete's own fastball: speed, breaks, and how much of its spin is across the flight. */
export function Fastball(props: { readonly session: SessionView; readonly baseline: BaselineView | null; readonly efficiency: FastballEfficiency; readonly efficiencyInferred: boolean; readonly inferred: boolean }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.frame;
  return (
    <section class="plan-fastball" aria-labelledby="fastball-title">
      <h2 id="fastball-title">{say().fastball}</h2>
      <dl class="measures">
        <Show when={props.baseline}>{(baseline) => <Measures baseline={baseline()} />}</Show>
        <div><dt>{props.efficiencyInferred ? say().efficiencyInferred : say().efficiency}</dt><dd>{efficiencyWords(props.efficiency, speech())}</dd></div>
      </dl>
      <Scale efficiency={props.efficiency} />
      <Show when={props.baseline}>
        {(baseline) => (
          <p class="quiet small">
            {say().spreadOf(baseline().count, dateText(baseline().atMs, props.session.timeZone, speech().language), baseline().number)}
            <Show when={baseline().origin === 'earlier'}> {say().earlierBaseline}</Show>
            <Show when={props.inferred}> {say().inferred}</Show>
          </p>
        )}
      </Show>
    </section>
  );
}

function Measures(props: { readonly baseline: BaselineView }) {
  const speech = useSpeech();
  const say = () => speech().words.plan.frame;
  const spread = (axis: 0 | 1) => correctedMad(props.baseline.cloud.map((fastball) => fastball[axis]));
  const withSpread = (said: string, spreadM: number | null) => (spreadM === null ? said : say().plusMinus(said, movementText(spreadM, speech(), 1)));
  const side = () => {
    const { armSide, gloveSide } = speech().words.trade;
    const amount = withSpread(movementText(Math.abs(props.baseline.armSideM), speech(), 1), spread(1));
    return `${amount} ${props.baseline.armSideM < 0 ? gloveSide : armSide}`;
  };
  return (
    <>
      <div><dt>{say().speed}</dt><dd>{say().plusMinus(speedText(props.baseline.speedMps, speech()), speedText(props.baseline.speedSpreadMps, speech()))}</dd></div>
      <div><dt>{say().vertical}</dt><dd>{withSpread(movementText(props.baseline.verticalM, speech(), 1), spread(0))}</dd></div>
      <div><dt>{say().side}</dt><dd>{side()}</dd></div>
    </>
  );
}

/** The efficiency against the two marks that favour a family: an interval that straddles one is seen to. */
function Scale(props: { readonly efficiency: FastballEfficiency }) {
  const speech = useSpeech();
  const data = () => {
    const { scale, efficiency } = speech().words.plan.frame;
    const description = scale.description(`${efficiency} ${efficiencyWords(props.efficiency, speech())}.`);
    return {
      efficiency: props.efficiency.kind === 'known' ? props.efficiency : null,
      marks: [EFFICIENCY_LOW, EFFICIENCY_HIGH] as const,
      texts: { name: scale.name, description, below: scale['seam-effect'], between: scale.between, above: scale.turnover },
    };
  };
  return <Drawn class="plan-scale" draw={(svg, { width, height }) => drawEfficiencyScale(svg, data(), { width, height, textPx: TEXT_PX })} />;
}
