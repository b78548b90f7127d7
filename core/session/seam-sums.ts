import { seamBoundM, type SeamBound } from '../coaching/seam-effect.ts';
import { errorsToSi } from '../facts/si.ts';
import type { HiddenBecause, UnexplainedReading } from '../facts/views.ts';
import { NO_VALUES, tallyWith, type Tally } from '../statistics/tally.ts';
import { degToRad, inchesToM } from '../units/convert.ts';
import { knownWind } from './air-of.ts';
import type { ThrowEntry } from './ledger.ts';

/** How far a measured axis may lie beside the true one on every throw, where the device does not say. House rule. */
const AXIS_BIAS_RAD = degToRad(3);
/** A wind that was said is flown with; it is believed to half a metre a second, which is half an inch. House rule. */
const KNOWN_WIND_SHIFT_M = inchesToM(0.5);

/** What is kept of throws to tell whether the seams push them. */
export interface SeamSums {
  readonly thrown: number;
  /** Of those that show it. */
  readonly acrossM: Tally;
  /** Sum over the same of what device and air may do to each. */
  readonly boundsM: number;
  /** Why the last one that hides it does. */
  readonly hidden: HiddenBecause | null;
}
export const NO_SEAMS: SeamSums = { thrown: 0, acrossM: NO_VALUES, boundsM: 0, hidden: null };

/** One throw more. */
export function withSeams(sums: SeamSums, entry: ThrowEntry, unexplained: UnexplainedReading): SeamSums {
  const thrown = sums.thrown + 1;
  if (unexplained.kind === 'not-visible') return { ...sums, thrown, hidden: unexplained.reason };
  const clean = cleanOf(entry, unexplained);
  return clean === null ? { ...sums, thrown } : { ...sums, thrown, acrossM: tallyWith(sums.acrossM, clean.acrossM), boundsM: sums.boundsM + clean.boundM };
}

/** The mean of what acts on each throw alike bounds what acts on their mean. */
function cleanOf({ source, air }: ThrowEntry, unexplained: UnexplainedReading): { readonly acrossM: number; readonly boundM: number } | null {
  if (unexplained.kind !== 'unexplained') return null;
  const { acrossM, pushM } = unexplained;
  if (acrossM === null || pushM === null) return null;
  const { axisBiasRad } = errorsToSi(source.standardErrors ?? {}, source.units);
  return { acrossM, boundM: seamBoundM({ axisBiasRad: axisBiasRad ?? AXIS_BIAS_RAD, movementM: pushM, wind: windOver(air) }) };
}

/** Where nobody said, a bullpen is taken to lie outdoors. */
function windOver(air: ThrowEntry['air']): SeamBound['wind'] {
  if (air === null) return 'outdoors';
  if (knownWind(air) !== null) return { shiftM: KNOWN_WIND_SHIFT_M };
  return air.where;
}
