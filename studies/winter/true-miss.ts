import { missOf } from '../../core/coaching/target.ts';
import type { TargetZone } from '../../core/facts/coach.ts';
import type { Separation } from '../../core/flight/arm.ts';
import { inducedBreakBetween } from '../../core/flight/movement.ts';
import type { Vector } from '../../core/flight/vector.ts';
import { feetToM } from '../../core/units/convert.ts';
import type { Random } from '../../simulators/random.ts';
import { drawShape, middleOf, type DrawnShape } from '../../simulators/sampling.ts';
import { aimOf, flown, type Direction } from './flown.ts';
import { shapeOf, type Hand } from './hand.ts';

const THROWS = 192;
/** Numbers that a shape draws: speed and spin, tilt and efficiency, the two of the seam. */
const DRAWS = 6;
/** Everybody's, because the movement hardly depends on it. */
const RELEASE_M: Vector = [0, feetToM(54.4), feetToM(5.9)];

/**
 * What a hand truly misses a target by, on average over its throws, in smallest differences that matter: the same throws, spread
 * evenly over what the hand does, for everybody. The lowest of the three families is the athlete's best one.
 */
export function trueMiss(hand: Hand, fastball: Hand, zone: TargetZone): number {
  const own = meanBreak(fastball);
  const shape = shapeOf(hand);
  const meant = middleOf(shape);
  const aim = aimOf(meant, RELEASE_M);
  let sum = 0;
  for (const deviates of EVEN) {
    const { verticalM, armSideM } = breakOf(drawShape(shape, listed(deviates), 1), aim);
    sum += missOf({ verticalM: verticalM - own.verticalM, armSideM: armSideM - own.armSideM }, zone).size;
  }
  return sum / THROWS;
}

/** Induced break of the middle throw of a hand; arm side positive. */
export function meanBreak(hand: Hand): Separation {
  const meant = middleOf(shapeOf(hand));
  return breakOf(meant, aimOf(meant, RELEASE_M));
}

function breakOf(drawn: DrawnShape, aim: Direction): Separation {
  const { start, end } = flown(drawn, RELEASE_M, aim).flight;
  const { verticalM, horizontalM } = inducedBreakBetween(start, end);
  return { verticalM, armSideM: -horizontalM };
}

/** Numbers that come in this order instead of by chance. */
function listed(deviates: readonly number[]): Random {
  let next = 0;
  return { uniform: () => 0.5, normal: () => deviates[next++]! };
}

/** Evenly spread normal numbers: the additive recurrence of the generalised golden ratio (Roberts, 2018; from memory), pair by pair through Box & Muller. */
const EVEN: readonly (readonly number[])[] = evenlySpread();

function evenlySpread(): number[][] {
  let ratio = 2;
  for (let round = 0; round < 50; round += 1) ratio = (1 + ratio) ** (1 / (DRAWS + 1));
  const uniform = (point: number, axis: number): number => (0.5 + (point + 1) * ratio ** -(axis + 1)) % 1;
  return Array.from({ length: THROWS }, (_, point) => Array.from({ length: DRAWS }, (_unused, axis) => {
    const [first, second] = [uniform(point, axis - (axis % 2)), uniform(point, axis - (axis % 2) + 1)];
    const length = Math.sqrt(-2 * Math.log(1 - first));
    return axis % 2 === 0 ? length * Math.cos(2 * Math.PI * second) : length * Math.sin(2 * Math.PI * second);
  }));
}
