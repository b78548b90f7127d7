import { setImmediate } from 'node:timers/promises';
import type { Athlete } from '../../core/facts/coach.ts';
import { judgingOf } from '../../core/session/judged.ts';
import { throwUnrounded } from '../../core/session/throws.ts';
import type { Cell, ThrowKnown } from './column.ts';
import { rowMaker, type TableShape } from './columns.ts';
import { ExportFailure } from './export-failure.ts';
import type { ReadableLog } from './readable-log.ts';
import { settledSessions, type SettledSession } from './settled-sessions.ts';

/** Whose throws are given out. */
export type Of = { readonly kind: 'all' } | { readonly kind: 'athlete'; readonly id: string } | { readonly kind: 'session'; readonly id: string };

/** Only part of them; both ends of each are in it. */
export interface Range {
  /** By their number in the session. */
  readonly fromThrow?: number;
  readonly toThrow?: number;
  /** By when they arrived, milliseconds since 1970. */
  readonly fromMs?: number;
  readonly toMs?: number;
}

/** Throws worked out at once; a path takes some milliseconds, and devices wait for an answer meanwhile. */
const AT_ONCE = 16;

/**
 * One row for each throw of a session, a few at a time; those of a session follow each other. Throws that nobody has are not in it.
 * @throws {ExportFailure} for a session or athlete that the log does not know, and when somebody is erased meanwhile
 */
export async function* rowsOf(log: ReadableLog, of: Of, range: Range, shape: TableShape): AsyncGenerator<Cell[][]> {
  const row = rowMaker(shape);
  for await (const settled of sessionsOf(log, of)) {
    let rows: Cell[][] = [];
    for (const thrown of throwsKnown(settled)) {
      if (!within(range, thrown)) continue;
      rows.push(row(thrown));
      if (rows.length < AT_ONCE) continue;
      yield rows;
      rows = [];
      await setImmediate();
    }
    if (rows.length > 0) yield rows;
  }
}

/** The sessions that are asked for. */
export async function* sessionsOf(log: ReadableLog, of: Of): AsyncGenerator<SettledSession> {
  let found = of.kind === 'all';
  for (const mound of log.mounds()) {
    for await (const settled of settledSessions(log, mound, ({ session, athlete }) => isOf(session, athlete, of))) {
      if (!isOf(settled.session.id, settled.session.athlete, of)) continue;
      found = true;
      yield settled;
      if (of.kind === 'session') return;
    }
  }
  if (!found) throw of.kind === 'session' ? new ExportFailure('unknown-session', 'There is no session with this id; the list of sessions has those there are.') : new ExportFailure('unknown-athlete', 'There is no athlete with this id; the list of athletes has those there are.');
}

function isOf(session: string, athlete: Athlete, of: Of): boolean {
  switch (of.kind) {
    case 'all': return true;
    case 'athlete': return athlete.id === of.id;
    case 'session': return session === of.id;
  }
}

function* throwsKnown({ mound, session, thrown }: SettledSession): Generator<ThrowKnown> {
  const judging = judgingOf(session, thrown);
  let number = 0;
  for (const entry of thrown.flat()) {
    number += 1;
    const tags = entry.tags[session.id]!;
    yield { mound, session, entry, tags, trial: session.trials.find(({ letter }) => letter === tags.trial) ?? null, view: throwUnrounded(entry, number, judging, session.decision) };
  }
}

function within({ fromThrow = 0, toThrow = Infinity, fromMs = -Infinity, toMs = Infinity }: Range, { view: { number, atMs } }: ThrowKnown): boolean {
  return number >= fromThrow && number <= toThrow && atMs >= fromMs && atMs <= toMs;
}
