import type { Stage } from '../facts/vocabulary.ts';
import type { PutAway, Thrown } from './ledger.ts';

/** How many throws a session has, in which stages, and how many of them are bookmarked. */
export function countedIn(thrown: Thrown, session: string): Pick<PutAway, 'count' | 'stages' | 'bookmarks'> {
  const stages = new Set<Stage>();
  let [count, bookmarks] = [0, 0];
  for (const run of thrown) {
    for (const { tags } of run) {
      const own = tags[session];
      if (own === undefined) continue;
      count += 1;
      stages.add(own.stage);
      if (own.bookmarked === true) bookmarks += 1;
    }
  }
  return { count, stages: [...stages], bookmarks };
}
