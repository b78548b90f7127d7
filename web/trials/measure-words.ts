import type { SingleMeasures } from '../../core/coaching/single-measures.ts';
import { movementText, numberText, speedText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';

/** One measure of B minus A: what it is, the difference, and its interval; never better or worse. */
export interface MeasureWords {
  readonly measure: keyof SingleMeasures;
  readonly title: string;
  readonly difference: string;
  /** Null where there is no interval; the difference then says why. */
  readonly interval: string | null;
}

/** How an amount of one measure is said, and each of its directions. */
interface Way {
  readonly amount: (size: number) => string;
  readonly less: (amount: string) => string;
  readonly more: (amount: string) => string;
}

/** The four measures in the order in which they are read. */
export function measureWords(measures: SingleMeasures, speech: Speech): readonly MeasureWords[] {
  const { pair } = speech.words.trials;
  const movement = (metres: number): string => movementText(metres, speech, 1);
  const ways: Readonly<Record<keyof SingleMeasures, Way>> = {
    verticalM: { amount: movement, less: pair.drop, more: pair.rise },
    armSideM: { amount: movement, less: pair.toGlove, more: pair.toArm },
    speedMps: { amount: (mps) => speedText(mps, speech), less: pair.slower, more: pair.faster },
    tiltRad: { amount: (rad) => numberText((rad / (2 * Math.PI)) * 720, 0, speech.language), less: pair.counter, more: pair.clockwise },
  };
  return (Object.keys(ways) as (keyof SingleMeasures)[]).map((measure) => ({ measure, title: pair.measure[measure], ...differenceWords(measures[measure], ways[measure], speech) }));
}

/** A rounded amount that is nothing has no direction. */
function saidOf(value: number, { amount, less, more }: Way, none: string): string {
  const size = amount(Math.abs(value));
  if (!/[1-9]/.test(size)) return none;
  return value < 0 ? less(size) : more(size);
}

/** An interval with the direction said once where both ends lie that way: "2.4 in to 6.0 in more drop". */
function spanOf(low: number, high: number, way: Way, { pair }: Speech['words']['trials']): string {
  if (high < 0) return pair.fromTo(way.amount(-high), saidOf(low, way, pair.none));
  return low > 0 ? pair.fromTo(way.amount(low), saidOf(high, way, pair.none)) : pair.fromTo(saidOf(low, way, pair.none), saidOf(high, way, pair.none));
}

function differenceWords(difference: SingleMeasures[keyof SingleMeasures], way: Way, { words }: Speech): Pick<MeasureWords, 'difference' | 'interval'> {
  const { pair } = words.trials;
  switch (difference.kind) {
    case 'interval': return { difference: saidOf(difference.difference, way, pair.none), interval: spanOf(difference.low, difference.high, way, words.trials) };
    case 'too-few': return { difference: pair.measureTooFew, interval: null };
    case 'too-scattered': return { difference: pair.scattered, interval: null };
    case 'missing': return { difference: words.measures.missing[difference.why], interval: null };
  }
}
