import type { FamilyAdvice } from '../../core/coaching/families.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { mayThrow } from '../../core/coaching/arm-care.ts';
import type { Book } from './book.ts';
import { adviceShown } from './evidence.ts';

/** How a coach who follows the planning screen came to a family. */
export interface FamilyChosen {
  readonly family: Family;
  /** What the screen said after the first five fastballs, and at the end. */
  readonly first: FamilyAdvice['kind'];
  readonly last: FamilyAdvice['kind'];
  readonly bullpens: number;
}

const BLOCK = 5;

/**
 * Tries what the screen says would change its answer, in its order, in blocks by turns; then, while it has no clear leader, the two
 * that lead. Ends when one leads clearly and nothing is left to try, or with the bullpens; the family is the one that leads then.
 */
export function familyByAdvice(book: Book, fastballs: number, bullpensAtMost: number): FamilyChosen {
  let first: FamilyAdvice['kind'] | null = null;
  for (let bullpens = 1; ; bullpens += 1) {
    book.open(fastballs);
    const advice = adviceShown(book);
    first ??= advice.kind;
    tryInTurn(book, toTry(advice));
    const last = adviceShown(book);
    book.close();
    if (bullpens === bullpensAtMost || toTry(last).length === 0) return { family: last.ranking[0]!.family, first, last: last.kind, bullpens };
  }
}

/** In the order of the ranking; nothing when the screen's answer is settled. */
function toTry({ kind, ranking, wouldChange }: FamilyAdvice): readonly Family[] {
  const open = new Set(wouldChange.flatMap((change) => (change.code === 'try-it' ? [change.family] : [])));
  const outstanding = ranking.map(({ family }) => family).filter((family) => open.has(family));
  if (outstanding.length > 0) return outstanding;
  return kind === 'lead-with' ? [] : ranking.slice(0, 2).map(({ family }) => family);
}

function tryInTurn(book: Book, families: readonly Family[]): void {
  const letters = new Map<Family, string>();
  for (let block = 0; ; block += 1) {
    const { care } = book;
    const left = mayThrow(care) ? care.left : 0;
    if (left === 0 || families.length === 0) return;
    const family = families[block % families.length]!;
    const letter = letters.get(family);
    if (letter === undefined) letters.set(family, book.begin({ family, ideas: [] }));
    else book.resume(letter);
    book.throws(Math.min(BLOCK, left), { family, ideas: [] });
  }
}
