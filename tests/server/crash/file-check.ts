import Database from 'libsql';
import { cpSync, rmSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'vitest';
import { FACT_VERSION, type Said } from '../../../core/facts/fact.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { moundView } from '../../../core/session/view.ts';

/** One fact as it stands in the file. */
export interface StoredLine {
  readonly mound: string;
  readonly place: number;
  readonly atMs: number;
  readonly by: string;
  readonly said: Said;
  readonly request: string | null;
}

/**
 * What a data folder holds of facts, read from a copy: opening a file that was left behind mends it, and that is the server's
 * to do. Fails when SQLite finds the file damaged.
 */
export function linesIn(dataFolder: string): StoredLine[] {
  const copy = `${dataFolder}-looked-at`;
  cpSync(dataFolder, copy, { recursive: true });
  const database = new Database(path.join(copy, 'facts.db'));
  try {
    expect(database.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    // A server may have been ended before it made the first table; nothing was acknowledged then, or the comparison finds it missing.
    if (database.prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'facts'").get() === undefined) return [];
    const rows = database.prepare('SELECT facts.mound, facts.place, facts.at_ms AS atMs, said_by AS by, said, request FROM facts LEFT JOIN requests ON requests.mound = facts.mound AND requests.place = facts.place ORDER BY entry').all();
    return (rows as (Omit<StoredLine, 'said'> & { said: string })[]).map((row) => ({ ...row, said: JSON.parse(row.said) as Said }));
  } finally {
    database.close();
    rmSync(copy, { recursive: true, force: true });
  }
}

/** Every number once, in the order in which the device counted. */
export function numbersOf(lines: readonly StoredLine[]): number[] {
  return lines.flatMap(({ said }) => (said.kind === 'throw-measured' ? [said.source.sequence] : []));
}

/** What playback makes of the lines. */
export function shownOf(lines: readonly StoredLine[]): unknown {
  const ledger = lines.reduce((before, { mound, place, atMs, by, said }) => foldFact(before, { mound, place, atMs, by, said, version: FACT_VERSION }), emptyLedger(lines[0]!.mound));
  return JSON.parse(JSON.stringify(moundView(ledger, null)));
}
