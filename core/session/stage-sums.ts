import { baselineDrift, NO_DRIFT, withFastballSince, type DriftRun } from '../coaching/baseline-drift.ts';
import type { FastballBaseline } from '../coaching/baseline.ts';
import { NO_SPEEDS, withSpeed, type SpeedRun } from '../coaching/fatigue.ts';
import { NO_BODIES, NO_FASTBALL_SPEEDS, withBody, withFastballSpeed, type BodyTallies, type FastballSpeeds } from '../coaching/honest-arm.ts';
import type { BaselineDrift } from '../facts/advice-view.ts';
import type { AnalysedThrow } from './analyse.ts';
import { bodyReadings } from './body-readings.ts';
import { fastballReading } from './fastballs.ts';
import type { Judging } from './judged.ts';
import type { Tags, ThrowEntry } from './ledger.ts';

/** What the throws of one stage add up to. */
export interface StageSums {
  /** Excluded ones too. */
  readonly count: number;
  /** Of the last throw that counts and is no fastball; null without one. */
  readonly lastWorkedAtMs: number | null;
  /** Of its fastballs. */
  readonly bodies: BodyTallies;
  readonly speeds: FastballSpeeds;
  readonly fatigue: SpeedRun;
  /** Since its newest baseline. */
  readonly drift: DriftRun;
}
export const NO_STAGE: StageSums = { count: 0, lastWorkedAtMs: null, bodies: NO_BODIES, speeds: NO_FASTBALL_SPEEDS, fatigue: NO_SPEEDS, drift: NO_DRIFT };

/** One throw more that is no fastball. */
export function withOther(sums: StageSums, { atMs }: ThrowEntry, { excluded }: Tags): StageSums {
  return { ...sums, count: sums.count + 1, lastWorkedAtMs: excluded === null ? atMs : sums.lastWorkedAtMs };
}

/** One fastball more. */
export function withFastballOf(sums: StageSums, entry: ThrowEntry, { excluded }: Tags, analysed: AnalysedThrow, judging: Judging, baseline: FastballBaseline | undefined): StageSums {
  const count = sums.count + 1;
  if (excluded !== null) return { ...sums, count };
  const reading = baseline === undefined ? null : fastballReading(entry, judging);
  const drift = reading === null ? sums.drift : withFastballSince(sums.drift, baseline!, reading);
  if (analysed.problem !== null) return { ...sums, count, drift };
  const { speedMps } = analysed;
  const known = typeof speedMps === 'number';
  return {
    count,
    lastWorkedAtMs: sums.lastWorkedAtMs,
    bodies: withBody(sums.bodies, bodyReadings(entry, analysed)),
    speeds: known ? withFastballSpeed(sums.speeds, speedMps) : sums.speeds,
    fatigue: known ? withSpeed(sums.fatigue, speedMps) : sums.fatigue,
    drift,
  };
}

/** Of the newest baseline of this session; an earlier one is left as soon as this session has its own. */
export function driftOf({ drift }: StageSums, own: readonly FastballBaseline[]): BaselineDrift | null {
  const newest = own.at(-1);
  return newest === undefined ? null : baselineDrift(newest, drift);
}
