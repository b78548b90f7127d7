import { separationFrom } from '../../core/coaching/separation.ts';
import { missOf } from '../../core/coaching/target.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { sessionBaselines } from '../../core/session/fastballs.ts';
import { thrownBy } from '../../core/session/ledger.ts';
import { analysisOf } from '../../core/session/memory.ts';
import { zoneIn } from '../../core/session/targets.ts';
import type { Tried } from './advised-ideas.ts';
import type { Book, Work } from './book.ts';
import { efficiencyShown } from './evidence.ts';

const BLOCK = 5;
const GLANCE = 3;

/** By the efficiency of the first fastballs alone: over 95 % a turnover, under 80 % a seam-effect one, else a split. */
export function familyByEfficiency(book: Book, fastballs: number): Family {
  book.open(fastballs);
  const shown = efficiencyShown(book);
  if (shown.kind === 'unknown') return 'split';
  return shown.mean > 0.95 ? 'turnover' : shown.mean < 0.8 ? 'seam-effect' : 'split';
}

interface Budget {
  readonly bullpens: number;
  readonly fastballs: number;
  readonly throwsPerBullpen: number;
  readonly bullpensPerTry: number;
  readonly ideas: number;
}

/** As many throws for each grip or cue as the other coach has for one; kept if the last three miss by less than the last three without it. */
export function ideasByGlance(book: Book, family: Family, budget: Budget): Tried[] {
  const tried: Tried[] = [];
  let standing: readonly number[] = [];
  for (let bullpen = 0; bullpen < budget.bullpens && tried.length < budget.ideas; bullpen += 1) {
    const idea = tried.length;
    const judged = (bullpen + 1) % budget.bullpensPerTry === 0;
    book.open(budget.fastballs);
    const [a, b] = throwsInTurn(book, [{ family, ideas: standing }, { family, ideas: [...standing, idea] }], budget.throwsPerBullpen - budget.fastballs);
    if (judged) {
      const kept = lastMiss(book, b) < lastMiss(book, a);
      tried.push({ idea, standing, kept, settled: true });
      if (kept) standing = [...standing, idea];
    }
  }
  return tried;
}

function throwsInTurn(book: Book, works: readonly [Work, Work], count: number): readonly [string, string] {
  const letters = [book.begin(works[0]), book.begin(works[1])] as const;
  for (let thrown = 0; thrown < count; thrown += BLOCK) {
    const turn = (thrown / BLOCK) % 2 === 0 ? 0 : 1;
    book.resume(letters[turn]);
    book.throws(Math.min(BLOCK, count - thrown), works[turn]);
  }
  return letters;
}

/** Mean miss of the last three throws of a trial of the open bullpen. */
function lastMiss({ ledger, session }: Book, letter: string): number {
  const thrown = thrownBy(ledger, session.id);
  const baseline = sessionBaselines(thrown, session, 'mound').at(-1) ?? session.earlier.mound;
  const last = thrown.flat().filter(({ tags }) => tags[session.id]?.trial === letter).slice(-GLANCE);
  const misses = last.flatMap((entry) => {
    const { verticalM, armSideM } = separationFrom(analysisOf(entry, session), baseline!);
    return typeof verticalM === 'number' && typeof armSideM === 'number' ? [missOf({ verticalM, armSideM }, zoneIn(session, 'mound')!).size] : [];
  });
  return misses.reduce((sum, miss) => sum + miss, 0) / misses.length;
}
