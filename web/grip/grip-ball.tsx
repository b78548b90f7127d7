import { Show } from 'solid-js';
import type { Grip } from '../../core/facts/coach.ts';
import { useWords } from '../words/use-words.tsx';
import { gripWords } from './grip-words.ts';
import './grip-ball.css';

/** Half the angle between the two fingertips on top of the ball, in degrees. A picture, not a measurement. */
const HALF_SPREAD: Readonly<Record<Grip['spread'], number>> = { together: 9, normal: 17, wide: 29, split: 50 };
/** How far the fingertips reach from the middle, in parts of the radius: deeper in the hand shows more finger. */
const REACH: Readonly<Record<Grip['depth'], number>> = { fingertips: 0.94, normal: 0.66, deep: 0.36 };
/** The ring finger lies so far beside the middle finger, in degrees; it is drawn only when it presses. */
const RING_BESIDE = 32;
const RADIUS = 40;

/** A point of the ball's face at an angle from its top, arm side drawn to the right for a right-hander. */
function at(degrees: number, radius: number, mirror: number): readonly [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [Math.sin(angle) * radius * mirror, -Math.cos(angle) * radius];
}

/** The grip as a small picture from behind: seams, two fingers on top, thumb below, the pressing finger filled. */
export function GripBall(props: { readonly grip: Grip; readonly hand: 'right' | 'left' }) {
  const words = useWords();
  const mirror = () => (props.hand === 'right' ? 1 : -1);
  const finger = (degrees: number) => {
    const [x1, y1] = at(degrees, RADIUS + 9, mirror());
    const [x2, y2] = at(degrees, RADIUS * REACH[props.grip.depth], mirror());
    return { x1, y1, x2, y2 };
  };
  // Seen from behind a right-hander, the index finger lies on the glove side of the middle finger: left of it.
  const presses = (name: 'index' | 'middle') => props.grip.pressure === name || props.grip.pressure === 'even';
  const thumb = () => {
    const [x1, y1] = at(180 - props.grip.thumbDeg, RADIUS + 9, mirror());
    const [x2, y2] = at(180 - props.grip.thumbDeg, RADIUS * 0.74, mirror());
    return { x1, y1, x2, y2 };
  };
  return (
    <svg class="grip-ball" viewBox="-58 -58 116 116" role="img" aria-label={`${words().bench.trial.gripPicture}: ${gripWords(props.grip, words())}`}>
      <circle class="ball" r={RADIUS} />
      <g class="seams" transform={`rotate(${props.grip.tiltDeg * mirror()})`}><Seams seams={props.grip.seams} /></g>
      <line class="digit" classList={{ pressing: presses('index') }} {...finger(-HALF_SPREAD[props.grip.spread])} />
      <line class="digit" classList={{ pressing: presses('middle') }} {...finger(HALF_SPREAD[props.grip.spread])} />
      <Show when={props.grip.pressure === 'ring'}><line class="digit pressing" {...finger(HALF_SPREAD[props.grip.spread] + RING_BESIDE)} /></Show>
      <line class="digit" {...thumb()} />
    </svg>
  );
}

/** How the seams run under the fingers: across them, along them, or one below them. */
function Seams(props: { readonly seams: Grip['seams'] }) {
  const paths: Readonly<Record<Grip['seams'], readonly string[]>> = {
    'four-seam': ['M-35 -19 Q0 -4 35 -19', 'M-35 19 Q0 4 35 19'],
    'two-seam': ['M-19 -35 Q-4 0 -19 35', 'M19 -35 Q4 0 19 35'],
    'one-seam': ['M-9 -39 Q26 0 -9 39'],
  };
  return <>{paths[props.seams].map((d) => <path d={d} />)}</>;
}
