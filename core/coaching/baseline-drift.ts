import type { BaselineDrift } from '../facts/advice-view.ts';
import type { Reading } from '../facts/views.ts';
import { smoothedWith } from '../statistics/ewma.ts';
import { inchesToM, mphToMps } from '../units/convert.ts';
import { FASTBALLS_NEEDED, type FastballBaseline, type FastballReading } from './baseline.ts';

const LAMBDA = 0.3;
/** So many smoothed values in a row. House rule, as are the next two: no published threshold exists. */
const IN_A_ROW = 3;
export const SINKS_BY_MPS = mphToMps(1.5);
export const RELEASE_MOVES_BY_M = inchesToM(2.5);

interface Smoothed {
  readonly known: number;
  /** The last few averages, the oldest first. */
  readonly last: readonly number[];
}
const NOTHING_YET: Smoothed = { known: 0, last: [] };

/** What is kept of the fastballs since a baseline. */
export interface DriftRun {
  readonly fastballs: number;
  readonly speedMps: Smoothed;
  readonly releaseHeightM: Smoothed;
  readonly releaseArmSideM: Smoothed;
}
export const NO_DRIFT: DriftRun = { fastballs: 0, speedMps: NOTHING_YET, releaseHeightM: NOTHING_YET, releaseArmSideM: NOTHING_YET };

type Standing = Pick<FastballBaseline, 'speedMps' | 'releaseHeightM' | 'releaseArmSideM' | 'sincePlace'>;

/** The next fastball of the baseline's stage, in the order thrown; excluded ones are left out. One that the baseline was made of says nothing. */
export function withFastballSince(run: DriftRun, baseline: Standing, fastball: FastballReading): DriftRun {
  if (fastball.place <= baseline.sincePlace) return run;
  const next = (of: 'speedMps' | 'releaseHeightM' | 'releaseArmSideM'): Smoothed => nextSmoothed(run[of], baseline[of], fastball[of]);
  return { fastballs: run.fastballs + 1, speedMps: next('speedMps'), releaseHeightM: next('releaseHeightM'), releaseArmSideM: next('releaseArmSideM') };
}

function nextSmoothed({ known, last }: Smoothed, from: Reading, reading: Reading): Smoothed {
  if (typeof from !== 'number' || typeof reading !== 'number') return { known, last };
  return { known: known + 1, last: smoothedWith(last, reading, { lambda: LAMBDA, start: from, keep: IN_A_ROW }) };
}

/**
 * Whether the fastballs since a baseline have left it: speed that sinks, or a release elsewhere, smoothed from where the
 * baseline stands. Separation gained from a tiring or lazy fastball is not separation, so a new baseline is then offered.
 * Null while it holds, while fewer than five have come since, and in a measure that either side does not have.
 */
export function baselineDrift(baseline: Standing, run: DriftRun): BaselineDrift | null {
  if (run.fastballs < FASTBALLS_NEEDED) return null;
  const speedMps = left(baseline.speedMps, run.speedMps, (change) => change <= -SINKS_BY_MPS);
  const elsewhere = (change: number): boolean => Math.abs(change) >= RELEASE_MOVES_BY_M;
  const releaseHeightM = left(baseline.releaseHeightM, run.releaseHeightM, elsewhere);
  const releaseArmSideM = left(baseline.releaseArmSideM, run.releaseArmSideM, elsewhere);
  if (speedMps === null && releaseHeightM === null && releaseArmSideM === null) return null;
  return { fastballs: run.fastballs, speedMps, releaseHeightM, releaseArmSideM };
}

/** The smoothed change where the last few all say that it has left; else null. */
function left(from: Reading, { known, last }: Smoothed, gone: (change: number) => boolean): number | null {
  if (typeof from !== 'number' || known < FASTBALLS_NEEDED) return null;
  const changes = last.map((value) => value - from);
  return changes.every(gone) ? changes.at(-1)! : null;
}
