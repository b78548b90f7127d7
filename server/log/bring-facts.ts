import type { Database } from 'libsql';
import path from 'node:path';
import { FACT_VERSION, type Fact, type Said } from '../../core/facts/fact.ts';
import { Numbers } from './numbers.ts';
import { openDatabase } from './open-database.ts';
import { growing } from './rows.ts';
import { checksumOf } from './stored-fact.ts';

export type BroughtReply = { readonly kind: 'brought'; readonly facts: number; readonly mounds: number } | { readonly kind: 'failed'; readonly sentence: string };

/** What is brought waits in memory for no more than so many. */
const ROWS_AT_ONCE = 500;

/** Facts that cannot follow each other in a log; the message is one sentence. */
class OutOfOrder extends Error {}

/**
 * Brings facts that another log gave out into a data folder whose own log is empty: each keeps its mound, its place, its time and who
 * said it. Where a file has only some of a mound's facts, a fact that something is not there fills each gap. All of them are on
 * disk at the end, or none.
 * @param as the moment that such a filling names, and what the log is called, unlike any other
 * @throws what `facts` throws; nothing was brought then
 */
export async function bringFacts(dataFolder: string, facts: AsyncIterable<Fact> | Iterable<Fact>, { nowMs, id }: { readonly nowMs: number; readonly id: string }): Promise<BroughtReply> {
  const file = path.join(dataFolder, 'facts.db');
  const opened = openDatabase(file, nowMs, null);
  if (opened.kind === 'failed') return opened;
  const { database, letGo } = opened;
  try {
    if (database.prepare('SELECT 1 FROM facts LIMIT 1').get() !== undefined) return { kind: 'failed', sentence: `The log in ${dataFolder} holds facts already, and facts keep their places; give an empty folder with --data.` };
    database.exec('BEGIN IMMEDIATE');
    const brought = await allOf(database, facts, nowMs);
    database.prepare('INSERT INTO log VALUES (1, ?, ?) ON CONFLICT DO UPDATE SET id = excluded.id').run(id, nowMs);
    database.exec('COMMIT');
    return { kind: 'brought', ...brought };
  } catch (error) {
    if (database.inTransaction) database.exec('ROLLBACK');
    if (error instanceof OutOfOrder) return { kind: 'failed', sentence: error.message };
    throw error;
  } finally {
    letGo();
  }
}

async function allOf(database: Database, facts: AsyncIterable<Fact> | Iterable<Fact>, nowMs: number): Promise<{ readonly facts: number; readonly mounds: number }> {
  const into = growing(database);
  const numbers = new Numbers(database, into.numbers);
  const places = new Map<string, number>();
  let count = 0;
  const put = (mound: string, place: number, atMs: number, by: string, said: Said): void => {
    const row = { mound, place, at_ms: atMs, said_by: by, version: FACT_VERSION, said: JSON.stringify(said) };
    into.facts.add(mound, place, atMs, by, FACT_VERSION, row.said, checksumOf(row));
    places.set(mound, place);
  };
  const intoFile = (): void => {
    numbers.complete();
    into.flush();
    numbers.stand();
  };
  for await (const { mound, place, atMs, by, said } of facts) {
    const last = places.get(mound) ?? 0;
    if (place <= last) throw new OutOfOrder(`Place ${place} of ${mound} comes after place ${last}; the facts of a mound must stand in the order of its log.`);
    for (let gap = last + 1; gap < place; gap += 1) put(mound, gap, atMs, 'server', { kind: 'erased', erasedAtMs: nowMs, tookMound: false, seenBy: null });
    settle(numbers, mound, place, said);
    put(mound, place, atMs, by, said);
    count += 1;
    if (count % ROWS_AT_ONCE === 0) intoFile();
  }
  intoFile();
  return { facts: count, mounds: places.size };
}

/** A device that sends the throw once more finds it stored. */
function settle(numbers: Numbers, mound: string, place: number, said: Said): void {
  if (said.kind !== 'throw-measured' && said.kind !== 'throw-corrected') return;
  const { device, run, sequence } = said.source;
  if (numbers.find({ device, run, sequence }) !== null) throw new OutOfOrder(`Place ${place} of ${mound} repeats number ${sequence} of run ${run}; each throw may come once.`);
  numbers.settle({ device, run, sequence }, said.kind, mound, place);
}
