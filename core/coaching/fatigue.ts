import type { FatigueSign } from '../facts/care-view.ts';
import { smoothedWith } from '../statistics/ewma.ts';
import { NO_VALUES, tallyWith, type Tally } from '../statistics/tally.ts';

/** Fastballs that the rest are held against. House rule, like every number here: no published threshold exists. */
const OWN_FIRST = 15;
const LAMBDA = 0.3;
const ASK_AT = -0.02;
const ASK_AFTER_THROWS = 3;
const END_AT = -0.04;

/** What is kept of the speeds of one stage's fastballs. */
export interface SpeedRun {
  readonly first: Tally;
  /** After each of the last few, the oldest first. */
  readonly smoothedMps: readonly number[];
}
export const NO_SPEEDS: SpeedRun = { first: NO_VALUES, smoothedMps: [] };

/** The next fastball, in the order thrown; excluded ones are left out. */
export function withSpeed({ first, smoothedMps }: SpeedRun, speedMps: number): SpeedRun {
  if (first.count < OWN_FIRST) return { first: tallyWith(first, speedMps), smoothedMps };
  return { first, smoothedMps: smoothedWith(smoothedMps, speedMps, { lambda: LAMBDA, start: first.mean, keep: ASK_AFTER_THROWS }) };
}

/**
 * Fastball speed against the athlete's own first fifteen of the session, smoothed. It only ever asks a question: one
 * study of young pitchers found no speed lost with fatigue (Keeley et al. 2013), so speed that holds says nothing.
 */
export function fatigueSign({ first, smoothedMps }: SpeedRun): FatigueSign {
  const lastThree = smoothedMps.map((speedMps) => speedMps / first.mean - 1);
  const change = lastThree.at(-1);
  if (change === undefined) return { kind: 'forming', have: first.count, need: OWN_FIRST };
  if (change <= END_AT) return { kind: 'ask-to-end', change };
  const sinks = lastThree.length === ASK_AFTER_THROWS && lastThree.every((one) => one <= ASK_AT);
  return { kind: sinks ? 'ask-the-pitcher' : 'no-speed-sign', change };
}
