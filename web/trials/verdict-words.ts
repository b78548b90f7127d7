import type { Comparison } from '../../core/coaching/comparison.ts';
import { MISS_OF_ONE_M } from '../../core/coaching/target.ts';
import type { Verdict } from '../../core/coaching/verdict.ts';
import type { TakenThrow } from '../../core/session/compared.ts';
import { isoDayText } from '../words/moments.ts';
import { isNothing, movementIn, movementText, numberText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import type { Names } from './names.ts';

/** The verdict in a few words. */
export function verdictWords({ kind }: Verdict, { a, b }: Names, { words }: Speech): string {
  return words.trials.verdict.said[kind](b, a);
}

/** A difference of misses: "2.4 in less". */
export function missDifference(difference: number, speech: Speech): string {
  const { verdict } = speech.words.trials;
  const metres = difference * MISS_OF_ONE_M;
  if (isNothing(movementIn(speech.units, metres), 1)) return verdict.same;
  const amount = movementText(Math.abs(metres), speech, 1);
  return metres < 0 ? verdict.less(amount) : verdict.more(amount);
}

/** A miss as a length: what does not matter, and what a picture is ruled by. */
export function missLength(miss: number, speech: Speech): string {
  return movementText(miss * MISS_OF_ONE_M, speech, 0);
}

/** Both ends of an interval of misses, the smaller amount first: "2.5 in", "4.9 in less". */
function missSpan(low: number, high: number, speech: Speech): readonly [string, string] {
  const bare = (miss: number): string => movementText(Math.abs(miss) * MISS_OF_ONE_M, speech, 1);
  if (high < 0) return [bare(high), missDifference(low, speech)];
  return low > 0 ? [bare(low), missDifference(high, speech)] : [missDifference(low, speech), missDifference(high, speech)];
}

/**
 * What the verdict rests on, in sentences.
 * @param advise whether an arm may throw at all; if not, no number of throws still to come is in them
 */
export function becauseWords({ verdict: found, smallestMiss }: Comparison, taken: readonly TakenThrow[], { a, b }: Names, advise: boolean, speech: Speech): readonly string[] {
  const say = speech.words.trials.verdict;
  if (found.kind === 'too-few') return [say.counts(a, keptOf(taken, 'a'), b, keptOf(taken, 'b')), ...(advise ? [say.takes] : [])];
  const { difference, low, high, shrunken } = found;
  const [from, to] = missSpan(low, high, speech);
  const same = isNothing(movementIn(speech.units, difference * MISS_OF_ONE_M), 1);
  const first = same ? say.missesSame(b, a, from, to) : say.misses(b, missDifference(difference, speech), a, from, to);
  const careful = same ? [] : [say.shrunken(missDifference(shrunken, speech))];
  switch (found.kind) {
    case 'better':
    case 'worse': return [first, found.matters ? say.matters : say.mayNotMatter(missLength(smallestMiss, speech)), ...careful];
    case 'not-settled': return [first, ...careful, ...(advise ? [say.daysMove] : [])];
    case 'no-difference-that-matters': return [first];
  }
}

function keptOf(taken: readonly TakenThrow[], trial: 'a' | 'b'): number {
  return taken.filter((thrown) => thrown.trial === trial && !thrown.excluded).length;
}

/** What makes a verdict less sure, and where an arm may throw what would make it surer. */
export function cautionWords(compared: Comparison, taken: readonly TakenThrow[], names: Names, advise: boolean, speech: Speech): readonly string[] {
  const say = speech.words.trials.verdict;
  const slips = compared.slips.flatMap((place) => taken.filter((thrown) => thrown.place === place)).map((thrown) => throwWords(thrown, taken, names, speech));
  return [
    ...(compared.gripAndTimeMixed ? [advise ? `${say.mixed} ${say.alternate(names.a, names.b)}` : say.mixed] : []),
    ...(compared.signsDiffer ? [say.signsDiffer] : []),
    ...(compared.spreadChanged && compared.spreadRatio !== null ? [widerWords(compared.spreadRatio, names, speech)] : []),
    ...(compared.acrossZone === null ? [] : [compared.acrossZone === 'between' ? say.between : say.bothSides]),
    ...(compared.neighboursAlike ? [say.neighbours] : []),
    ...(slips.length === 0 ? [] : [say.slips(slips.join(', '))]),
  ];
}

/** Which of the two scatters more, and how many times as much. */
function widerWords(ratio: number, { a, b }: Names, { words, language }: Speech): string {
  const [wider, narrower, times] = ratio > 1 ? [b, a, ratio] : [a, b, 1 / ratio];
  return words.trials.verdict.spreadChanged(wider, narrower, numberText(times, 1, language));
}

/** Excluded throws with their reasons, and the verdict without and with them. Empty where none was excluded. */
export function excludedWords({ verdict: found, withExcluded }: Comparison, taken: readonly TakenThrow[], names: Names, speech: Speech): { readonly throws: readonly string[]; readonly verdicts: readonly string[] } {
  const say = speech.words.trials.verdict;
  const excluded = taken.filter((thrown) => thrown.excluded);
  if (excluded.length === 0) return { throws: [], verdicts: [] };
  return {
    throws: excluded.map((thrown) => say.excluded(throwWords(thrown, taken, names, speech), thrown.because ?? '')),
    verdicts: withExcluded === null ? [say.sameWith] : [say.without(verdictWords(found, names, speech)), say.with(verdictWords(withExcluded, names, speech))],
  };
}

/** One line a day; none where there is but one. */
export function dayWords({ days }: Comparison, { a, b }: Names, speech: Speech): readonly string[] {
  const { verdict } = speech.words.trials;
  if (days.length < 2) return [];
  return days.map(({ day, difference, countA, countB }) => verdict.dayIs(isoDayText(day, speech.language), missDifference(difference, speech), a, countA, b, countB));
}

function throwWords({ number, trial, day }: TakenThrow, taken: readonly TakenThrow[], names: Names, { words, language }: Speech): string {
  const say = words.trials.verdict;
  const oneDay = taken.every((other) => other.day === day);
  return oneDay ? say.throwOf(number, names[trial]) : say.throwOfDay(number, names[trial], isoDayText(day, language));
}
