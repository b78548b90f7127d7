import type { Comparison } from '../../core/coaching/comparison.ts';
import { mayThrow } from '../../core/coaching/arm-care.ts';
import { nextBlock } from '../../core/coaching/blocks.ts';
import type { ArmCare } from '../../core/facts/care-view.ts';
import type { TakenThrow } from '../../core/session/compared.ts';
import { isoDayText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';
import type { Names } from './names.ts';

/** What to throw next, in sentences. Where an arm may not throw there is no number in them. */
export function nextWords({ outlook, verdict }: Comparison, taken: readonly TakenThrow[], care: ArmCare, names: Names, speech: Speech): readonly string[] {
  if (!mayThrow(care)) return [stoppedWords(care, speech)];
  const say = speech.words.trials.pair;
  switch (outlook.kind) {
    case 'stopped': return [];
    case 'settled': return [say.settled, ...(verdict.kind === 'better' ? [say.learned] : [])];
    case 'more': return [...moreWords(outlook, care.left, names, speech), ...blockWords(taken, care, names, speech)];
  }
}

/** Why nothing is suggested. */
function stoppedWords(care: Exclude<ArmCare, { kind: 'under' | 'near' }>, { words, language }: Speech): string {
  const say = words.trials.pair;
  switch (care.kind) {
    case 'pain-reported': return say.medical;
    case 'soreness-reported': return say.sore;
    case 'rest-due': return say.rest(isoDayText(care.until.day, language));
    case 'reached': return say.reached;
  }
}

function moreWords({ each, ofBAlone, fitsToday, until }: Extract<Comparison['outlook'], { kind: 'more' }>, left: number, { a, b }: Names, { words }: Speech): readonly string[] {
  const say = words.trials.pair;
  if (each === null) return [until === 'verdict' ? say.noSpread : say.never];
  const alone = ofBAlone === null ? say.tooShort(a, b) : say.alone(b, ofBAlone);
  return [`${say.each(each, say.until[until])}.`, alone, fitsToday ? say.fits(left) : say.notToday(left)];
}

/** The block that comes next today, and the one after it. */
function blockWords(taken: readonly TakenThrow[], care: Extract<ArmCare, { kind: 'under' | 'near' }>, names: Names, { words }: Speech): readonly string[] {
  const say = words.trials.pair;
  const today = taken.filter(({ day, excluded }) => day === care.day && !excluded).map(({ trial }) => trial as string);
  const next = nextBlock(care, today, ['a', 'b']);
  if (next === null) return [];
  const nameOf = (trial: string): string => (trial === 'a' ? names.a : names.b);
  const after = nextBlock({ ...care, left: care.left - next.throws }, [...today, ...Array.from({ length: next.throws }, () => next.trial)], ['a', 'b']);
  const first = say.block(next.throws, nameOf(next.trial));
  return [after === null ? say.lastBlock(first) : say.blocks(first, say.block(after.throws, nameOf(after.trial)))];
}
