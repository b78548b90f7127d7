import type { Stage } from '../facts/vocabulary.ts';
import type { BaselineView, Missing, Reading } from '../facts/views.ts';
import type { ConstantAcceleration } from '../flight/constant-acceleration.ts';
import type { Vector } from '../flight/vector.ts';
import { hodgesLehmann } from '../statistics/centre.ts';
import { correctedMad } from '../statistics/spread.ts';

/** Fastballs of a stage after which the baseline forms. House rule. */
export const FASTBALLS_NEEDED = 5;

/** What the baseline needs of a fastball; arm side positive, SI. */
export interface FastballReading {
  readonly place: number;
  readonly atMs: number;
  readonly speedMps: number;
  readonly verticalM: number;
  readonly armSideM: number;
  readonly flightTimeS: Reading;
  readonly releaseHeightM: Reading;
  readonly releaseArmSideM: Reading;
  /** From the release to the plate, in a right-hander's terms. */
  readonly path: ConstantAcceleration | Missing;
}

/** The athlete's own fastball as a view says it, before rounding, and from where in the log it holds. */
export type FastballBaseline = Omit<BaselineView, 'kind' | 'origin'> & {
  /** Place of the fact that completed or renewed it. */
  readonly sincePlace: number;
};

/** What is kept of a stage's fastballs to know its baselines: none of them but those that a baseline may rest on. */
export interface FastballRuns {
  readonly count: number;
  /** The last few, the oldest first. */
  readonly last: readonly FastballReading[];
  /** What baselines rest on, and where in the log each was completed or asked for. */
  readonly runs: readonly { readonly run: readonly FastballReading[]; readonly sincePlace: number }[];
  /** How many renewals are behind the last fastball. */
  readonly renewed: number;
}
export const NO_FASTBALLS: FastballRuns = { count: 0, last: [], runs: [], renewed: 0 };

/**
 * The next fastball in the order of the log.
 * @param renewals places at which a new baseline was asked for, the first first
 */
export function withFastball(before: FastballRuns, fastball: FastballReading, renewals: readonly number[]): FastballRuns {
  const { count, last, runs, renewed } = renewedBefore(before, fastball.place, renewals);
  const now = [...last.slice(1 - FASTBALLS_NEEDED), fastball];
  const formed = count + 1 === FASTBALLS_NEEDED ? [{ run: now, sincePlace: fastball.place }] : [];
  return { count: count + 1, last: now, runs: [...formed, ...runs], renewed };
}

/** A renewal with fewer than five fastballs before it changes nothing. */
function renewedBefore(before: FastballRuns, place: number, renewals: readonly number[]): FastballRuns {
  let { runs, renewed } = before;
  for (; renewed < renewals.length && renewals[renewed]! < place; renewed += 1) {
    if (before.last.length === FASTBALLS_NEEDED) runs = [...runs, { run: before.last, sincePlace: renewals[renewed]! }];
  }
  return renewed === before.renewed ? before : { ...before, runs, renewed };
}

/**
 * The baselines of one stage in a session, oldest first: one from the first five fastballs, and one for each renewal,
 * from the five fastballs before it. Hodges–Lehmann centre and small-sample MAD, so that one slip does not move every separation.
 * @param fastballs folded in the order of the log, excluded ones left out
 * @param renewals the places that they were folded with
 * @param before number of the athlete's baseline before these
 */
export function baselinesOf(stage: Stage, fastballs: FastballRuns, renewals: readonly number[], before: number): FastballBaseline[] {
  const { runs } = renewedBefore(fastballs, Infinity, renewals);
  return runs.map(({ run, sincePlace }, index) => baselineFrom(run, stage, before + index + 1, sincePlace));
}

const remembered = new WeakMap<FastballReading, Map<string, { readonly run: readonly FastballReading[]; readonly baseline: FastballBaseline }>>();

/** Of the very same fastballs it is the very same baseline, and what was held against it needs no second look. */
function baselineFrom(run: readonly FastballReading[], stage: Stage, number: number, sincePlace: number): FastballBaseline {
  const last = run[run.length - 1]!;
  const known = remembered.get(last) ?? new Map<string, { readonly run: readonly FastballReading[]; readonly baseline: FastballBaseline }>();
  remembered.set(last, known);
  const key = `${stage}/${number}/${sincePlace}`;
  const found = known.get(key);
  if (found !== undefined && found.run.every((fastball, index) => fastball === run[index])) return found.baseline;
  const baseline = workedOutFrom(run, stage, number, sincePlace);
  known.set(key, { run, baseline });
  return baseline;
}

function workedOutFrom(run: readonly FastballReading[], stage: Stage, number: number, sincePlace: number): FastballBaseline {
  const centre = (of: (fastball: FastballReading) => number): number => centreOf(run.map(of));
  const verticalM = centre((fastball) => fastball.verticalM);
  const armSideM = centre((fastball) => fastball.armSideM);
  return {
    number,
    stage,
    count: run.length,
    sincePlace,
    atMs: run[run.length - 1]!.atMs,
    speedMps: centre((fastball) => fastball.speedMps),
    speedSpreadMps: correctedMad(run.map((fastball) => fastball.speedMps)) ?? 0,
    verticalM,
    armSideM,
    flightTimeS: centreOfKnown(run.map((fastball) => fastball.flightTimeS)),
    releaseHeightM: centreOfKnown(run.map((fastball) => fastball.releaseHeightM)),
    releaseArmSideM: centreOfKnown(run.map((fastball) => fastball.releaseArmSideM)),
    path: middlePath(run.map((fastball) => fastball.path)),
    cloud: run.map((fastball) => [fastball.verticalM - verticalM, fastball.armSideM - armSideM] as const),
  };
}

/** A centre only where every fastball has the reading; else the first reason why not. */
function centreOfKnown(readings: readonly Reading[]): Reading {
  const missing = readings.find((reading) => typeof reading !== 'number');
  return missing ?? centreOf(readings as readonly number[]);
}

/** Number by number, like the rest of a baseline. */
function middlePath(paths: readonly (ConstantAcceleration | Missing)[]): ConstantAcceleration | Missing {
  const missing = paths.find((path) => typeof path === 'string');
  if (missing !== undefined) return missing;
  const known = paths.filter((path) => typeof path !== 'string');
  const centre = (of: (path: ConstantAcceleration) => Vector): Vector => {
    const along = (axis: 0 | 1 | 2): number => centreOf(known.map((path) => of(path)[axis]));
    return [along(0), along(1), along(2)];
  };
  return {
    positionM: centre((path) => path.positionM),
    velocityMps: centre((path) => path.velocityMps),
    accelerationMps2: centre((path) => path.accelerationMps2),
  };
}

/** Never empty here: a baseline has five fastballs. */
function centreOf(values: readonly number[]): number {
  return hodgesLehmann(values)!;
}

/** The baseline that a throw is held against: the newest that stood when it was thrown, else the first of its session. */
export function baselineAt(baselines: readonly FastballBaseline[], place: number): FastballBaseline | null {
  const standing = baselines.filter((baseline) => baseline.sincePlace <= place);
  return standing[standing.length - 1] ?? baselines[0] ?? null;
}
