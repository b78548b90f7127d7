import type { GapView, SeparationView, SessionView, ThrowView } from '../../core/facts/views.ts';
import { millisecondsText, numberText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { arrivalWords, missWords, paceWords, sideWords, verticalWords } from '../words/throw-words.ts';
import { moveText } from './amounts.ts';
import { numberRow, seenBy, wordRow, type NumberRow } from './number-row.ts';

/** How far the throw is from the athlete's own fastball; in one row why there is nothing to tell. */
export function fastballRows(thrown: ThrowView, session: SessionView, speech: Speech): NumberRow[] {
  const { separation } = thrown;
  if (separation === null) return [wordRow('separation', whyNone(thrown, speech), false, [], speech)];
  return [...separationRows(thrown, separation, speech), ...(thrown.fastball ? [] : [...gapRows(thrown, speech), ...missRow(thrown, session, speech)])];
}

function whyNone({ problem, excluded }: ThrowView, { words: { measures, plane, trade } }: Speech): string {
  if (excluded !== null) return trade.excluded;
  return problem === null ? plane.noBaseline : measures.missing.problem;
}

function separationRows(thrown: ThrowView, separation: SeparationView, speech: Speech): NumberRow[] {
  const { throwNumbers: say, trade } = speech.words;
  const rests = (what: string): string[] => [say.baseline(trade.fastballBaseline(separation.baseline), what)];
  const seen = rests(seenBy(thrown, speech));
  const moved = rests(thrown.inferred ? say.rests.inferred : seenBy(thrown, speech));
  return [
    numberRow('pace', separation.speedMps, (mps) => paceWords(mps, speech, 1), seen, speech),
    numberRow('verticalSeparation', separation.verticalM, (metres) => verticalWords(metres, speech, 1), moved, speech),
    numberRow('horizontalSeparation', separation.armSideM, (metres) => sideWords(metres, speech, 1), moved, speech),
    arrivalRow(thrown, separation, rests, speech),
    numberRow('releaseShift', separation.releaseShiftM, (metres) => say.away(moveText(metres, speech)), seen, speech),
  ];
}

/** Against the fastball aimed at the same place; where the path is not seen, the difference of two flight times. */
function arrivalRow({ gap, flightTimeFrom }: ThrowView, { arrivalS }: SeparationView, rests: (what: string) => string[], speech: Speech): NumberRow {
  const { throwNumbers: say } = speech.words;
  const aimed = gap !== null && typeof gap === 'object';
  return numberRow('arrival', aimed ? gap.aimedArrivalS : arrivalS, (seconds) => arrivalWords(seconds, speech), aimed ? [say.aimed] : rests(say.rests[flightTimeFrom ?? 'device']), speech);
}

function gapRows({ gap }: ThrowView, speech: Speech): NumberRow[] {
  const { throwNumbers: say, asked: { gapLine } } = speech.words;
  const row = (number: 'decisionGap' | 'plateGap', of: (gap: GapView) => number, rests: (gap: GapView) => string[] = () => []): NumberRow[] => {
    if (gap === null) return [];
    const reading = typeof gap === 'string' ? gap : of(gap);
    return [numberRow(number, reading, (widths) => gapLine.widths(numberText(widths, 1, speech.language)), typeof gap === 'string' ? [] : [say.aimed, ...rests(gap)], speech)];
  };
  const decided = ({ decisionBeforeS, decisionBasis }: GapView): string[] => [gapLine.decided(millisecondsText(decisionBeforeS, speech), gapLine.basis[decisionBasis])];
  return [...row('decisionGap', ({ decisionWidths }) => decisionWidths, decided), ...row('plateGap', ({ plateWidths }) => plateWidths)];
}

/** A throw whose movement is not known has no miss either; only where the target is missing that is said instead. */
function missRow({ miss, stage }: ThrowView, { zone, stage: now }: SessionView, speech: Speech): NumberRow[] {
  if (miss !== null) return [wordRow('miss', missWords(miss, speech), true, [], speech)];
  return stage === now && zone !== null ? [] : [wordRow('miss', speech.words.measures.noZone, false, [], speech)];
}
