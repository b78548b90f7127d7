import { mayThrow } from '../../core/coaching/arm-care.ts';
import { nextBlock } from '../../core/coaching/blocks.ts';
import { compareTrials, type Comparison } from '../../core/coaching/comparison.ts';
import type { MayThrow } from '../../core/facts/care-view.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { allTaken, newestBaseline } from '../../core/session/compared.ts';
import { zoneIn } from '../../core/session/targets.ts';
import { comparisonOf, nextComparison } from '../../core/session/planned.ts';
import type { Book, Work } from './book.ts';

/** Whether one grip or cue is held on to, and whether that was settled or only given up. */
interface Ending {
  readonly kept: boolean;
  readonly settled: boolean;
}

/** What became of one grip or cue. */
export interface Tried extends Ending {
  readonly idea: number;
  /** What was held on to before it. */
  readonly standing: readonly number[];
}

interface Budget {
  readonly bullpens: number;
  readonly fastballs: number;
  readonly throwsPerTry: number;
  readonly ideas: number;
}

/** A comparison that goes on: which one, of which idea, and what it has cost. */
interface Trying {
  readonly idea: number;
  readonly k: number;
  thrown: number;
}

/** Fewer throws than this are no beginning: two blocks. */
const FEWEST_TO_BEGIN = 10;

/**
 * One grip or cue after the other, each as a comparison with what is held on to, in the blocks that are offered and over days. It is
 * kept when the verdict says `better`; it goes when another verdict is reached, when the outlook is longer than patience, or with
 * the throws. What is neither kept nor settled goes as well: the coach keeps what was known to be so.
 */
export function ideasByAdvice(book: Book, family: Family, budget: Budget): Tried[] {
  const tried: Tried[] = [];
  let standing: readonly number[] = [];
  let trying: Trying | null = null;
  for (let bullpen = 0; bullpen < budget.bullpens; bullpen += 1) {
    book.open(budget.fastballs);
    for (;;) {
      const idea: number = trying?.idea ?? tried.length;
      if (idea >= budget.ideas || leftToday(book) < (trying === null ? FEWEST_TO_BEGIN : 1)) break;
      const now: Trying = trying ?? { idea, k: nextComparison(book.session.planned), thrown: 0 };
      const ending = compareToday(book, { family, ideas: standing }, now, budget.throwsPerTry);
      trying = ending === null ? now : null;
      if (ending === null) break;
      tried.push({ idea, standing, ...ending });
      if (ending.kept) standing = [...standing, idea];
    }
    book.close();
  }
  return tried;
}

const careFor = (book: Book): MayThrow | null => {
  const { care } = book;
  return mayThrow(care) ? care : null;
};
const leftToday = (book: Book): number => careFor(book)?.left ?? 0;

/** Today's blocks of a comparison; null: carry on next time. */
function compareToday(book: Book, held: Work, trying: Trying, throwsAtMost: number): Ending | null {
  const works: readonly [Work, Work] = [held, { ...held, ideas: [...held.ideas, trying.idea] }];
  const letters = [book.begin(works[0]), book.begin(works[1])] as const;
  enter(book, letters, trying.k);
  const thrown: string[] = [];
  let compared: Comparison | null = null;
  for (;;) {
    const care = careFor(book);
    const block = care === null ? null : nextBlock(care, thrown, letters);
    const count = Math.min(block?.throws ?? 0, throwsAtMost - trying.thrown);
    if (block === null || count <= 0) break;
    book.resume(block.trial);
    book.throws(count, works[block.trial === letters[0] ? 0 : 1]);
    for (let one = 0; one < count; one += 1) thrown.push(block.trial);
    trying.thrown += count;
    if (!thrown.includes(letters[1])) continue; // of one trial alone there is nothing to look at
    compared = lookAt(book, trying.k);
    const { kind } = compared.verdict;
    if (kind !== 'too-few' && kind !== 'not-settled') return { kept: kind === 'better', settled: true };
  }
  const givenUp: Ending = { kept: false, settled: false };
  if (compared === null || trying.thrown >= throwsAtMost) return givenUp;
  const { outlook } = compared;
  const within = outlook.kind === 'more' && outlook.each !== null && 2 * outlook.each <= throwsAtMost - trying.thrown;
  return within || outlook.kind === 'stopped' ? null : givenUp;
}

/** The comparison becomes a fact, with today as its first or its next day. */
function enter(book: Book, [a, b]: readonly [string, string], k: number): void {
  const { ledger, session } = book;
  const { id, planned } = session;
  const zone = zoneIn(session, 'mound');
  const baseline = newestBaseline(ledger, session, 'mound');
  if (zone === null || baseline === null) throw new Error(`${id} has no target or no baseline`);
  const day = { a, b, baseline };
  book.say(comparisonOf(planned, k) === undefined
    ? { kind: 'comparison-opened', session: id, k, stage: 'mound', zone, ...day }
    : { kind: 'comparison-continued', session: id, k, day: { session: id, ...day } });
}

function lookAt(book: Book, k: number): Comparison {
  const entry = comparisonOf(book.session.planned, k)!;
  return compareTrials(allTaken(entry, () => book.ledger), { number: k, zone: entry.zone, today: book.care.day, mayThrow: careFor(book) });
}
