import type { Reading } from '../facts/views.ts';
import { anytimeDifference } from '../statistics/anytime-difference.ts';
import { blockedDifference } from '../statistics/blocked-difference.ts';
import { unrolled } from '../statistics/two-angles.ts';
import { byDay, daysOf, ofTrial, type ComparedThrow, type Valued } from './compared-throw.ts';
import { FEWEST_THROWS } from './verdict.ts';

/** An interval beside the verdict, B minus A; it is never called better or worse, for no single measure is. */
type MeasureDifference =
  | { readonly kind: 'interval'; readonly difference: number; readonly low: number; readonly high: number }
  | { readonly kind: 'too-few' }
  /** Of tilt: one of the trials has no axis to speak of. */
  | { readonly kind: 'too-scattered' }
  | { readonly kind: 'missing'; readonly why: Exclude<Reading, number> };

export interface SingleMeasures {
  readonly verticalM: MeasureDifference;
  readonly armSideM: MeasureDifference;
  readonly speedMps: MeasureDifference;
  /** The short way round. */
  readonly tiltRad: MeasureDifference;
}

/** Fixed beforehand, whatever the device shows. */
const MEASURES = 4;

/** The four measures beside the miss; their intervals hold together at every look with confidence 1 − α. */
export function singleMeasures(throws: readonly ComparedThrow[], alpha: number): SingleMeasures {
  const share = alpha / MEASURES;
  return {
    verticalM: interval(known(throws, ({ verticalM }) => verticalM), share),
    armSideM: interval(known(throws, ({ armSideM }) => armSideM), share),
    speedMps: interval(known(throws, ({ speedMps }) => speedMps), share),
    tiltRad: tilt(known(throws, ({ tiltRad }) => tiltRad), share),
  };
}

type Known = readonly Valued[] | { readonly kind: 'missing'; readonly why: Exclude<Reading, number> };

/** Throws that have the reading; where none of one trial has, why not. */
function known(throws: readonly ComparedThrow[], read: (thrown: ComparedThrow) => Reading): Known {
  const values: Valued[] = [];
  let why: Exclude<Reading, number> | null = null;
  for (const thrown of throws) {
    const reading = read(thrown);
    if (typeof reading === 'number') values.push({ place: thrown.place, day: thrown.day, trial: thrown.trial, value: reading });
    else why ??= reading;
  }
  const oneHasNone = ofTrial(values, 'a').length === 0 || ofTrial(values, 'b').length === 0;
  return why !== null && oneHasNone ? { kind: 'missing', why } : values;
}

function interval(values: Known, alpha: number): MeasureDifference {
  if ('kind' in values) return values;
  const found = blockedDifference(byDay(values, daysOf(values)));
  if (found === null || Math.min(found.design.countA, found.design.countB) < FEWEST_THROWS) return { kind: 'too-few' };
  const between = anytimeDifference(found, alpha);
  if (between === null) return { kind: 'too-few' };
  return { kind: 'interval', difference: between.difference, low: between.low, high: between.high };
}

function tilt(angles: Known, alpha: number): MeasureDifference {
  if ('kind' in angles) return angles;
  const [a, b] = [ofTrial(angles, 'a'), ofTrial(angles, 'b')];
  if (Math.min(a.length, b.length) < FEWEST_THROWS) return { kind: 'too-few' };
  const turned = unrolled(a.map(({ value }) => value), b.map(({ value }) => value));
  if (turned.kind === 'too-scattered') return turned;
  const values = [...a.map((one, i) => ({ ...one, value: turned.a[i]! })), ...b.map((one, i) => ({ ...one, value: turned.b[i]! }))];
  return interval(values, alpha);
}
