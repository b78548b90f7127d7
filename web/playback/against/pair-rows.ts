import type { Reading, ReadingWithError, ThrowView } from '../../../core/facts/views.ts';
import { movementIn, MOVEMENT_UNIT, isNothing, numberText, readingText, shareText, speedIn, SPEED_UNIT, speedText, spinText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';
import { arrivalWords, missWords, paceWords, sideWords, verticalWords } from '../../words/throw-words.ts';
import { placeText, toSide } from '../../throw-numbers/amounts.ts';
import type { Pair } from './pair-of.ts';

/** One measure of two throws side by side: what each has, and the second minus the first. */
export interface PairRow {
  readonly name: string;
  readonly first: string;
  readonly second: string;
  readonly difference: string;
}

type RowName = keyof Speech['words']['playback']['against']['rows'];

interface Measure {
  readonly name: Exclude<RowName, 'target'>;
  readonly of: (thrown: ThrowView) => Reading;
  readonly say: (value: number) => string;
  readonly sayDifference: (value: number) => string;
  /** The reading whose standard error is that of this measure. */
  readonly error: ReadingWithError | null;
  readonly sayError: (error: number) => string;
}

/** Standard errors to either side of a 95 % interval of one number. */
const EITHER_SIDE = 1.96;

export function pairRows(pair: Pair, speech: Speech): PairRow[] {
  const { rows } = speech.words.playback.against;
  const [{ thrown: first }, { thrown: second }] = pair;
  const measured = measures(speech).map((measure) => ({
    name: rows[measure.name],
    first: readingText(measure.of(first), measure.say, speech),
    second: readingText(measure.of(second), measure.say, speech),
    difference: differenceWords(measure, pair, speech),
  }));
  const target = (thrown: ThrowView) => (thrown.miss === null ? '–' : missWords(thrown.miss, speech));
  return [...measured, { name: rows.target, first: target(first), second: target(second), difference: '' }];
}

function differenceWords({ name, of, sayDifference, error, sayError }: Measure, pair: Pair, { words }: Speech): string {
  const [{ thrown: first }, { thrown: second }] = pair;
  const [a, b] = [of(first), of(second)];
  if (typeof a !== 'number' || typeof b !== 'number') return '–';
  const errors = error === null || !comparable(name, pair) ? null : [first.standardErrors?.[error], second.standardErrors?.[error]];
  const doubt = errors === null || errors.includes(undefined) ? null : EITHER_SIDE * Math.hypot(...(errors as number[]));
  const said = sayDifference(b - a);
  return `${said === '' ? words.playback.against.alike : said}${doubt === null ? '' : ` ± ${sayError(doubt)}`}`;
}

/** A separation from the same baseline has that baseline's doubt in both, and none of it in the difference; from two baselines nobody told how sure they are. */
function comparable(name: RowName, [one, other]: Pair): boolean {
  return !['pace', 'vertical', 'side', 'arrival'].includes(name) || (one.session.id === other.session.id && one.thrown.separation?.baseline === other.thrown.separation?.baseline);
}

function measures(speech: Speech): Measure[] {
  const { language, units, words } = speech;
  const separation = (which: 'speedMps' | 'verticalM' | 'armSideM' | 'arrivalS') => ({ separation: of }: ThrowView): Reading => of?.[which] ?? 'not-defined';
  const gap = (which: 'decisionWidths' | 'plateWidths') => ({ gap: of }: ThrowView): Reading => (of === null ? 'not-defined' : typeof of === 'string' ? of : of[which]);
  const widths = (value: number) => words.asked.gapLine.widths(numberText(value, 1, language));
  const signed = (value: number, decimals: number, unit: (text: string) => string) => (isNothing(value, decimals) ? '' : `${value > 0 ? '+' : '−'}${unit(numberText(Math.abs(value), decimals, language))}`);
  const unlessNothing = (value: number, shown: number, decimals: number, say: (value: number) => string) => (isNothing(shown, decimals) ? '' : say(value));
  // A doubt is never said to be nothing.
  const tenths = (value: number) => numberText(Math.max(0.1, value), 1, language);
  const movementError = (error: number) => `${tenths(movementIn(units, error))} ${MOVEMENT_UNIT[units]}`;
  const speedError = (error: number) => `${tenths(speedIn(units, error))} ${SPEED_UNIT[units]}`;
  const none = { error: null, sayError: () => '' } as const;
  const pace = (value: number) => unlessNothing(value, speedIn(units, value), 1, (mps) => paceWords(mps, speech, 1));
  return [
    { name: 'speed', of: ({ speedMps }) => speedMps, say: (value) => speedText(value, speech), sayDifference: pace, error: 'speedMps', sayError: speedError },
    { name: 'pace', of: separation('speedMps'), say: (value) => paceWords(value, speech, 1), sayDifference: pace, error: 'speedMps', sayError: speedError },
    { name: 'vertical', of: separation('verticalM'), say: (value) => verticalWords(value, speech, 1), sayDifference: (value) => unlessNothing(value, movementIn(units, value), 1, (metres) => verticalWords(metres, speech, 1)), error: 'verticalM', sayError: movementError },
    { name: 'side', of: separation('armSideM'), say: (value) => sideWords(value, speech, 1), sayDifference: (value) => unlessNothing(value, movementIn(units, value), 1, (metres) => sideWords(metres, speech, 1)), error: 'armSideM', sayError: movementError },
    { name: 'arrival', of: separation('arrivalS'), say: (value) => arrivalWords(value, speech), sayDifference: (value) => unlessNothing(value, value * 1000, 0, (seconds) => arrivalWords(seconds, speech)), error: 'flightTimeS', sayError: (error) => words.measures.milliseconds(tenths(error * 1000)) },
    { name: 'decision', of: gap('decisionWidths'), say: widths, sayDifference: (value) => signed(value, 1, words.asked.gapLine.widths), ...none },
    { name: 'plate', of: gap('plateWidths'), say: widths, sayDifference: (value) => signed(value, 1, words.asked.gapLine.widths), ...none },
    { name: 'spin', of: ({ spinRpm }) => spinRpm, say: (value) => spinText(value, speech), sayDifference: (value) => signed(Math.round(value / 10) * 10, 0, words.measures.rpm), ...none },
    { name: 'efficiency', of: ({ efficiency }) => efficiency, say: (value) => shareText(value, speech), sayDifference: (value) => signed(value * 100, 0, words.measures.percent), ...none },
    { name: 'releaseHeight', of: ({ releaseHeightM }) => releaseHeightM, say: (value) => placeText(value, speech), sayDifference: (value) => unlessNothing(value, movementIn(units, value), 1, (metres) => verticalWords(metres, speech, 1)), error: 'releaseHeightM', sayError: movementError },
    { name: 'releaseSide', of: ({ releaseArmSideM }) => releaseArmSideM, say: (value) => toSide(value, (metres) => placeText(metres, speech), speech), sayDifference: (value) => unlessNothing(value, movementIn(units, value), 1, (metres) => sideWords(metres, speech, 1)), error: 'releaseArmSideM', sayError: movementError },
  ];
}
