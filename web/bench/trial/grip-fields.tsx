import { createUniqueId } from 'solid-js';
import type { Grip } from '../../../core/facts/coach.ts';
import { useWords } from '../../words/use-words.tsx';
import { Choice } from '../fields/choice.tsx';
import { GripBall } from '../../grip/grip-ball.tsx';
import { gripWords, sideAngleWords } from '../../grip/grip-words.ts';

/** A grip in words; its parts, long on a phone, are one tap below. What carries over from the last trial comes folded. */
export function FoldedGrip(props: GripProps & { readonly open: boolean }) {
  const words = useWords();
  return (
    <details class="grip-fold" open={props.open}>
      <summary><span><b>{words().bench.trial.grip}:</b> {gripWords(props.grip, words())}</span></summary>
      <GripFields grip={props.grip} hand={props.hand} onGrip={props.onGrip} />
    </details>
  );
}

interface GripProps {
  readonly grip: Grip;
  readonly hand: 'right' | 'left';
  readonly onGrip: (grip: Grip) => void;
}

/** The six parts of a grip, with a picture of it. */
function GripFields(props: GripProps) {
  const words = useWords();
  const say = () => words().bench.trial;
  const change = (part: Partial<Grip>) => props.onGrip({ ...props.grip, ...part });
  return (
    <div class="grip-fields">
      <GripBall grip={props.grip} hand={props.hand} />
      <div class="grip-words">
        <Choice legend={say().seams} options={['two-seam', 'four-seam', 'one-seam'] as const} say={(seams) => say().seam[seams]} chosen={props.grip.seams} onChoose={(seams) => change({ seams })} />
        <Choice legend={say().spread} options={['together', 'normal', 'wide', 'split'] as const} say={(spread) => say().spreads[spread]} chosen={props.grip.spread} onChoose={(spread) => change({ spread })} />
        <Choice legend={say().pressure} options={['index', 'middle', 'ring', 'even'] as const} say={(finger) => say().finger[finger]} chosen={props.grip.pressure} onChoose={(pressure) => change({ pressure })} />
        <Choice legend={say().depth} options={['fingertips', 'normal', 'deep'] as const} say={(depth) => say().depths[depth]} chosen={props.grip.depth} onChoose={(depth) => change({ depth })} />
      </div>
      <Angle label={say().thumb} most={180} step={15} value={props.grip.thumbDeg} none={say().under} hand={props.hand} onValue={(thumbDeg) => change({ thumbDeg })} />
      <Angle label={say().tilt} most={90} step={5} value={props.grip.tiltDeg} none={say().straight} hand={props.hand} onValue={(tiltDeg) => change({ tiltDeg })} />
    </div>
  );
}

/** An angle from the middle to both sides. The arm side of the slider is the arm side of the thrower seen from behind. */
function Angle(props: { readonly label: string; readonly most: number; readonly step: number; readonly value: number; readonly none: string; readonly hand: 'right' | 'left'; readonly onValue: (degrees: number) => void }) {
  const words = useWords();
  const id = createUniqueId();
  const mirror = () => (props.hand === 'right' ? 1 : -1);
  const said = () => sideAngleWords(props.value, props.none, words());
  return (
    <div class="field wide angle">
      <label for={id}>{props.label}</label>
      <output for={id}>{said()}</output>
      <input id={id} type="range" min={-props.most} max={props.most} step={props.step} value={props.value * mirror()} aria-valuetext={said()}
        onInput={(event) => props.onValue(Number(event.currentTarget.value) * mirror() + 0)} />
    </div>
  );
}
