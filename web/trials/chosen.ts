import type { OpenedComparison } from './comparison-of.ts';
import { rowKey, type TrialRow } from './rows.ts';

/** Keys of the trials that are chosen: none, one, or two of one stage. */
export type Chosen = readonly string[];

/** The choice after a trial was touched: out if it was in; a third takes the place of the first; another stage begins anew. */
export function touched(chosen: Chosen, row: TrialRow, rows: readonly TrialRow[]): Chosen {
  if (chosen.includes(row.key)) return chosen.filter((key) => key !== row.key);
  const kept = chosen.filter((key) => rows.find((one) => one.key === key)?.stage === row.stage);
  return [...kept.slice(-1), row.key];
}

/** What a link asks for, where it still exists; else the newest comparison; else the two newest trials of one session and stage. */
export function firstChoice(asked: Chosen, rows: readonly TrialRow[], opened: readonly OpenedComparison[]): Chosen {
  const known = asked.filter((key) => rows.some((row) => row.key === key));
  if (known.length > 0) return known.slice(0, 2);
  const newest = opened[0]?.entry;
  const day = newest?.days.at(-1);
  if (newest !== undefined && day !== undefined) return [day.a, day.b].map((letter) => rowKey(day.session, letter, newest.stage));
  const last = rows[0];
  const partner = rows.find((row) => row !== last && row.session === last?.session && row.stage === last.stage);
  return last === undefined || partner === undefined ? [] : [partner.key, last.key];
}

/** The two chosen rows, the older first; null unless there are two. */
export function pairOf(chosen: Chosen, rows: readonly TrialRow[]): readonly [TrialRow, TrialRow] | null {
  const found = chosen.flatMap((key) => rows.find((row) => row.key === key) ?? []).toSorted((a, b) => a.atMs - b.atMs);
  const [a, b] = found;
  return a === undefined || b === undefined ? null : [a, b];
}

/** The choice in an address. */
export function chosenIn(search: string): Chosen {
  return (new URLSearchParams(search).get('pair') ?? '').split('~').filter((key) => key !== '');
}
export function chosenText(chosen: Chosen): string | null {
  return chosen.length === 0 ? null : chosen.join('~');
}
