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

type Say = (amount: number) => string;

/** The four measures in the order in which they are read. */
export function measureWords(measures: SingleMeasures, speech: Speech): readonly MeasureWords[] {
  const { pair } = speech.words.trials;
  const movement = (less: Say1, more: Say1): Say => (metres) => oneWay(metres, movementText(Math.abs(metres), speech, 1), less, more, pair.none);
  const says: Readonly<Record<keyof SingleMeasures, Say>> = {
    verticalM: movement(pair.drop, pair.rise),
    armSideM: movement(pair.toGlove, pair.toArm),
    speedMps: (mps) => oneWay(mps, speedText(Math.abs(mps), speech), pair.slower, pair.faster, pair.none),
    tiltRad: (rad) => {
      const minutes = numberText((Math.abs(rad) / (2 * Math.PI)) * 720, 0, speech.language);
      return oneWay(rad, minutes, pair.counter, pair.clockwise, pair.none);
    },
  };
  return (Object.keys(says) as (keyof SingleMeasures)[]).map((measure) => ({ measure, title: pair.measure[measure], ...differenceWords(measures[measure], says[measure], speech) }));
}

type Say1 = (amount: string) => string;

/** A rounded amount that is nothing has no direction. */
function oneWay(value: number, amount: string, less: Say1, more: Say1, none: string): string {
  if (!/[1-9]/.test(amount)) return none;
  return value < 0 ? less(amount) : more(amount);
}

function differenceWords(difference: SingleMeasures[keyof SingleMeasures], say: Say, { words }: Speech): Pick<MeasureWords, 'difference' | 'interval'> {
  const { pair } = words.trials;
  switch (difference.kind) {
    case 'interval': return { difference: say(difference.difference), interval: pair.fromTo(say(difference.low), say(difference.high)) };
    case 'too-few': return { difference: pair.measureTooFew, interval: null };
    case 'too-scattered': return { difference: pair.scattered, interval: null };
    case 'missing': return { difference: words.measures.missing[difference.why], interval: null };
  }
}
