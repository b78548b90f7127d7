import type { ThrowView } from '../../core/facts/views.ts';
import type { Checkpoints } from '../../core/session/checkpoints.ts';
import type { SessionEntry } from '../../core/session/ledger.ts';

/** A note or a bookmark, and where it leads. */
export interface Remark {
  readonly kind: 'note' | 'bookmark';
  /** Null where it is about the session. */
  readonly thrown: ThrowView | null;
  readonly text: string;
  /** When it was said; of a bookmark that is not asked. */
  readonly atMs: number | null;
  /** It was said after the session was closed. */
  readonly later: boolean;
  /** Place of the log. */
  readonly goTo: number;
}

/** Notes and bookmarks in the order of what they are about; about the session, in the order in which they were said. */
export function remarksOf({ id, closedAtMs }: Pick<SessionEntry, 'id' | 'closedAtMs'>, throws: readonly ThrowView[], { facts }: Pick<Checkpoints, 'facts'>): Remark[] {
  const byPlace = new Map(throws.map((thrown) => [thrown.place, thrown]));
  const notes = facts.flatMap(({ place, atMs, said }): Remark[] => {
    if (said.kind !== 'note-written' || said.session !== id) return [];
    return [{ kind: 'note', thrown: byPlace.get(said.place ?? 0) ?? null, text: said.text, atMs, later: closedAtMs !== null && atMs > closedAtMs, goTo: said.place ?? place }];
  });
  const bookmarks = throws.filter(({ bookmarked }) => bookmarked).map((thrown): Remark => ({ kind: 'bookmark', thrown, text: '', atMs: null, later: false, goTo: thrown.place }));
  return [...bookmarks, ...notes].sort((a, b) => a.goTo - b.goTo);
}
