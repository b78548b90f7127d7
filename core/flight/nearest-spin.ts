import { separationBySpin, type Arm, type ArmThrow, type Separation, type Span } from './arm.ts';
import { wrapTurn } from './spin.ts';

/** The throw of an arm whose spin comes nearest to a place on the separation plane. */
export interface NearestSpin {
  readonly thrown: ArmThrow;
  /** What it gives, by a real flight. */
  readonly separation: Separation;
  /** From there to the place asked for: what a seam effect would have to add. */
  readonly leftOver: Separation;
}

const turn = 2 * Math.PI;
const closeEnoughM = 1e-6;
const mostRounds = 40;
const probeRad = 1e-3;

/**
 * The tilt, efficiency and spin, within the spans of the arm, whose flight comes nearest to `target`; the gyro part may point either
 * way. Many throws reach the same place: the one returned keeps spin and speed in the middle of their spans and reaches with tilt
 * and efficiency, which a grip changes; only where that is not enough it takes more (or less) spin, and only then another speed.
 * Solved on real flights. Null when a ball of this arm does not get to the plate.
 */
export function nearestSpin(arm: Arm, target: Separation): NearestSpin | null {
  const either = [solve(arm, target, 1), solve(arm, target, -1)].filter((found) => found !== null);
  const [best, other] = either.sort((a, b) => length(a.leftOver) - length(b.leftOver));
  if (best === undefined) return null;
  // As near as each other: the gyro part along the flight, so that the answer does not hang on the last bit.
  return other !== undefined && length(other.leftOver) - length(best.leftOver) < closeEnoughM && best.thrown.gyroSign === -1 ? other : best;
}

function solve(arm: Arm, target: Separation, gyroSign: ArmThrow['gyroSign']): NearestSpin | null {
  const fly = (tiltRad: number, effort: number): Separation | null => separationBySpin(arm, throwOf(arm, tiltRad, effort, gyroSign));
  const middle = middleOf(fly);
  if (middle === null) return null;
  const towards = minus(target, middle);
  let tiltRad = length(towards) < closeEnoughM ? 0 : angleOf(towards);
  let effort = 0;
  for (let round = 0; round < mostRounds; round += 1) {
    effort = effortTowards(fly, tiltRad, target);
    const here = fly(tiltRad, effort);
    if (here === null) return null;
    const stepRad = Math.abs(effort) === strongest ? turnToNearest(fly, tiltRad, effort, target) : wrapped(angleOf(towards) - angleOf(minus(here, middle)));
    if (length(minus(target, here)) < closeEnoughM || Math.abs(stepRad) < 1e-9) break;
    tiltRad += stepRad;
  }
  const thrown = throwOf(arm, wrapTurn(tiltRad), effort, gyroSign);
  const separation = separationBySpin(arm, thrown);
  return separation === null ? null : { thrown, separation, leftOver: minus(target, separation) };
}

/** The ends of the scale of effort, on which movement grows: see `throwOf`. */
const strongest = 3;

/**
 * One scale from the least movement of an arm, −3, to the most, 3: first the efficiency goes through its span (−1 to 1), then, outside,
 * the spin to the end of its own, then the speed: a slower ball moves more.
 */
function throwOf({ efficiency, spinRpm, speedMps }: Arm, tiltRad: number, effort: number, gyroSign: ArmThrow['gyroSign']): ArmThrow {
  const beyond = (from: number): number => Math.sign(effort) * Math.min(1, Math.max(0, Math.abs(effort) - from));
  return {
    tiltRad,
    gyroSign,
    efficiency: within(efficiency, Math.min(1, Math.max(-1, effort))),
    spinRpm: within(spinRpm, beyond(1)),
    speedMps: within(speedMps, -beyond(2)),
  };
}

function within({ low, high }: Span, share: number): number {
  return (low * (1 - share) + high * (1 + share)) / 2;
}

type Fly = (tiltRad: number, effort: number) => Separation | null;

/** The middle of four throws a quarter of the clock apart: where the ball would go without lift, nearly. */
function middleOf(fly: Fly): Separation | null {
  const four = [0, 1, 2, 3].map((quarter) => fly((quarter * turn) / 4, 0)).filter((point) => point !== null);
  if (four.length < 4) return null;
  const mean = (of: (point: Separation) => number): number => four.reduce((sum, point) => sum + of(point), 0) / 4;
  return { verticalM: mean((point) => point.verticalM), armSideM: mean((point) => point.armSideM) };
}

/** The effort at which a throw of this tilt gets as far along the tilt as the target lies: false position, with the ends halved in turn. */
function effortTowards(fly: Fly, tiltRad: number, target: Separation): number {
  const missing = (effort: number): number => {
    const here = fly(tiltRad, effort);
    return here === null ? Number.NaN : (target.verticalM - here.verticalM) * Math.cos(tiltRad) + (target.armSideM - here.armSideM) * Math.sin(tiltRad);
  };
  let [low, high] = [-strongest, strongest];
  let [atLow, atHigh] = [missing(low), missing(high)];
  if (!(atLow > 0)) return low;
  if (!(atHigh < 0)) return high;
  for (let round = 0; round < 60 && high - low > 1e-12; round += 1) {
    const effort = (low * atHigh - high * atLow) / (atHigh - atLow);
    const at = missing(effort);
    if (Math.abs(at) < closeEnoughM / 100) return effort;
    if (at > 0) [low, atLow, atHigh] = [effort, at, atHigh / 2];
    else [high, atHigh, atLow] = [effort, at, atLow / 2];
  }
  return (low + high) / 2;
}

/** Newton's step along the edge of what can be reached, to where the target lies straight off it. */
function turnToNearest(fly: Fly, tiltRad: number, effort: number, target: Separation): number {
  const [before, here, after] = [fly(tiltRad - probeRad, effort), fly(tiltRad, effort), fly(tiltRad + probeRad, effort)];
  if (before === null || here === null || after === null) return 0;
  const off = minus(target, here);
  const way = scaled(minus(after, before), 1 / (2 * probeRad));
  const bend = scaled(minus(minus(after, here), minus(here, before)), 1 / probeRad ** 2);
  const curvature = dotted(way, way) - dotted(off, bend);
  return curvature > 0 ? dotted(off, way) / curvature : Math.sign(dotted(off, way)) * probeRad;
}

function minus(one: Separation, other: Separation): Separation {
  return { verticalM: one.verticalM - other.verticalM, armSideM: one.armSideM - other.armSideM };
}

function scaled({ verticalM, armSideM }: Separation, factor: number): Separation {
  return { verticalM: verticalM * factor, armSideM: armSideM * factor };
}

function dotted(one: Separation, other: Separation): number {
  return one.verticalM * other.verticalM + one.armSideM * other.armSideM;
}

function length({ verticalM, armSideM }: Separation): number {
  return Math.hypot(verticalM, armSideM);
}

/** The tilt whose push points there. */
function angleOf({ verticalM, armSideM }: Separation): number {
  return Math.atan2(armSideM, verticalM);
}

function wrapped(angleRad: number): number {
  return angleRad - turn * Math.round(angleRad / turn);
}
