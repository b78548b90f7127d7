import { rpmToRadps } from '../units/convert.ts';
import { add, cross, dot, norm, scale, type Vector } from './vector.ts';

/** One standard error of a measured spin. */
export interface SpinErrors {
  readonly rateRpm: number;
  /** Of the axis, in each of the two directions across it. An error of tilt is this over the efficiency. */
  readonly axisRad: number;
}

interface NudgedSpin {
  readonly less: Vector;
  readonly more: Vector;
  /** One standard error over the nudge: what is found half the way from `less` to `more`, times this, is one standard error of it. */
  readonly errorPerNudge: number;
}

const nudgeShare = 0.01;
const nudgeRad = 0.02;

/** A spin moved a little to both sides, in rate and in the two directions of its axis: the three independent errors of a measured spin, rad/s. */
export function nudgedSpins(spinRadps: Vector, { rateRpm, axisRad }: SpinErrors): NudgedSpin[] {
  const rate = norm(spinRadps);
  const [first, second] = acrossAxis(scale(spinRadps, 1 / rate));
  const rateError = rpmToRadps(rateRpm) / (nudgeShare * rate);
  const turned = (towards: Vector, angleRad: number): Vector => add(scale(spinRadps, Math.cos(angleRad)), scale(towards, rate * Math.sin(angleRad)));
  return [
    { less: scale(spinRadps, 1 - nudgeShare), more: scale(spinRadps, 1 + nudgeShare), errorPerNudge: rateError },
    ...[first, second].map((towards) => ({ less: turned(towards, -nudgeRad), more: turned(towards, nudgeRad), errorPerNudge: axisRad / nudgeRad })),
  ];
}

/** Two unit vectors across an axis and each other. */
function acrossAxis(axis: Vector): [Vector, Vector] {
  const aside: Vector = Math.abs(axis[1]) < 0.7 ? [0, 1, 0] : [1, 0, 0];
  const first = add(aside, scale(axis, -dot(aside, axis)));
  const unit = scale(first, 1 / norm(first));
  return [unit, cross(axis, unit)];
}
