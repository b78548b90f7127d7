import type { BaselineDrift } from '../facts/advice-view.ts';
import type { Reading } from '../facts/views.ts';
import { ewma } from '../statistics/ewma.ts';
import { inchesToM, mphToMps } from '../units/convert.ts';
import { FASTBALLS_NEEDED, type FastballBaseline, type FastballReading } from './baseline.ts';

const LAMBDA = 0.3;
/** So many smoothed values in a row. House rule, as are the next two: no published threshold exists. */
const IN_A_ROW = 3;
export const SINKS_BY_MPS = mphToMps(1.5);
export const RELEASE_MOVES_BY_M = inchesToM(2.5);

/**
 * Whether the fastballs since a baseline have left it: speed that sinks, or a release elsewhere, smoothed from where the
 * baseline stands. Separation gained from a tiring or lazy fastball is not separation, so a new baseline is then offered.
 * Null while it holds, while fewer than five have come since, and in a measure that either side does not have.
 * @param fastballs of the baseline's stage, in the order thrown, excluded ones left out
 */
export function baselineDrift(baseline: Pick<FastballBaseline, 'speedMps' | 'releaseHeightM' | 'releaseArmSideM' | 'sincePlace'>, fastballs: readonly FastballReading[]): BaselineDrift | null {
  const since = fastballs.filter(({ place }) => place > baseline.sincePlace);
  if (since.length < FASTBALLS_NEEDED) return null;
  const speedMps = left(baseline.speedMps, since.map((one) => one.speedMps), (change) => change <= -SINKS_BY_MPS);
  const elsewhere = (change: number): boolean => Math.abs(change) >= RELEASE_MOVES_BY_M;
  const releaseHeightM = left(baseline.releaseHeightM, since.map((one) => one.releaseHeightM), elsewhere);
  const releaseArmSideM = left(baseline.releaseArmSideM, since.map((one) => one.releaseArmSideM), elsewhere);
  if (speedMps === null && releaseHeightM === null && releaseArmSideM === null) return null;
  return { fastballs: since.length, speedMps, releaseHeightM, releaseArmSideM };
}

/** The smoothed change where the last few all say that it has left; else null. */
function left(from: Reading, readings: readonly Reading[], gone: (change: number) => boolean): number | null {
  const known = readings.filter((reading) => typeof reading === 'number');
  if (typeof from !== 'number' || known.length < FASTBALLS_NEEDED) return null;
  const changes = ewma(known, LAMBDA, from).map((value) => value - from).slice(-IN_A_ROW);
  return changes.every(gone) ? changes.at(-1)! : null;
}
