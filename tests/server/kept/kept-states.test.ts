import Database from 'libsql';
import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, truncateSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { listSessions } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { followLedgers } from '../../../server/ledgers.ts';
import type { FactLog } from '../../../server/log/fact-log.ts';
import { removeWhole } from '../../../server/log/whole-file.ts';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { busyDay } from '../../parity/sessions.ts';
import { folderForTest } from '../folder.ts';

/** More than is looked through at once. */
const { facts, sessions } = busyDay(3, 'north-1', 'summary', 150);
const HALF = Math.floor(facts.length * 0.6);

/** A data folder whose log can be followed again and again. */
class Past {
  readonly folder = folderForTest();
  readonly shelf = path.join(this.folder, 'ledgers.db');
  readonly #troubles: string[] = [];
  #nowMs = 0;

  get troubles(): readonly string[] {
    return this.#troubles;
  }

  #open() {
    const opened = openSqliteLog({ file: path.join(this.folder, 'facts.db'), nowMs: () => this.#nowMs, newId: () => 'log-a', onTrouble: (error) => void this.#troubles.push(String(error)) });
    if (opened.kind === 'failed') throw new Error(opened.sentence);
    return opened.log;
  }

  #followed(log: FactLog) {
    return followLedgers(log, this.shelf, (error) => void this.#troubles.push(String(error)), { nowMs: () => 0 });
  }

  /** Writes facts, followed by a server that keeps what it made of them, or by nobody. */
  async add(more: readonly Fact[], isFollowed: boolean): Promise<void> {
    const log = this.#open();
    const ledgers = isFollowed ? await this.#followed(log) : null;
    for (const { mound, by, said, atMs } of more) {
      this.#nowMs = atMs;
      // oxlint-disable-next-line no-await-in-loop -- each has its own time
      await log.append({ mound, by, said });
    }
    ledgers?.close();
    log.close();
  }

  /** All that a server says of it, and whether it had to read the whole log for it. */
  async said(meanwhile: () => void = () => {}): Promise<{ readonly told: string; readonly readAll: boolean }> {
    const log = this.#open();
    let [readAll, isStarting] = [false, true];
    const read = (...[mound, after, through]: Parameters<typeof log.read>): Iterable<Fact> => {
      readAll ||= after === 0 && (through === undefined || (isStarting && through >= facts.length));
      return log.read(mound, after, through);
    };
    const ledgers = await this.#followed(Object.assign(Object.create(log) as typeof log, { read }));
    isStarting = false;
    meanwhile();
    const ledger = (): ReturnType<typeof ledgers.of> => ledgers.of('north-1');
    const told = JSON.stringify([listSessions(ledger()), [null, ...sessions].map((session) => moundView(ledger(), session)), sessions.map((session) => ledgers.recorded(session))]);
    ledgers.close();
    log.close();
    // A hash, because nobody reads what differs in a hundred thousand letters.
    return { told: createHash('sha256').update(told).digest('hex'), readAll };
  }
}

/** Followed up to its middle, written to the end: as after a crash. */
async function crashed(): Promise<{ readonly past: Past; readonly fromScratch: string }> {
  const past = new Past();
  await past.add(facts.slice(0, HALF), true);
  await past.add(facts.slice(HALF), false);
  copyFileSync(past.shelf, `${past.shelf}.kept`);
  removeWhole(past.shelf);
  const { told, readAll } = await past.said();
  expect(readAll).toBe(true);
  removeWhole(past.shelf);
  copyFileSync(`${past.shelf}.kept`, past.shelf);
  return { past, fromScratch: told };
}

test('what was kept, and the facts since, say to the last bit what the whole log says', async () => {
  const { past, fromScratch } = await crashed();
  expect(await past.said()).toEqual({ told: fromScratch, readAll: false });
  expect(await past.said()).toEqual({ told: fromScratch, readAll: false });
  expect(past.troubles).toEqual([]);
});

function changed(file: string, sql: string): void {
  const database = new Database(file);
  database.exec(sql);
  database.close();
}

const DAMAGES: Readonly<Record<string, (shelf: string) => void>> = {
  'no such file': (shelf) => writeFileSync(shelf, 'dear diary '.repeat(1000)),
  'half a file': (shelf) => truncateSync(shelf, 9000),
  'a state that is not what was written': (shelf) => changed(shelf, 'UPDATE states SET bytes = zeroblob(length(bytes))'),
  'a state of another program': (shelf) => changed(shelf, "UPDATE stamp SET stamp = stamp || ' of old'"),
  'a folder': (shelf) => {
    removeWhole(shelf);
    mkdirSync(shelf);
  },
};

test.each(Object.keys(DAMAGES))('%s in its place is never believed, and never keeps a server from starting', async (what) => {
  const { past, fromScratch } = await crashed();
  DAMAGES[what]!(past.shelf);
  expect(await past.said()).toEqual({ told: fromScratch, readAll: true });
});

test('throws that were put away and can no longer be read back are folded from the log again', async () => {
  const past = new Past();
  await past.add(facts, true);
  const whole = await past.said();
  expect(whole.readAll).toBe(false);
  expect(await past.said(() => changed(past.shelf, "UPDATE packs SET bytes = x'00'"))).toEqual({ ...whole, readAll: true });
  expect(past.troubles).toEqual([expect.stringContaining('could not be read back')]);
});

test('the state of another log under the same name is not believed: a backup may have been put back', async () => {
  const { past, fromScratch } = await crashed();
  const other = new Past();
  await other.add(facts.slice(0, HALF - 1), true);
  copyFileSync(other.shelf, past.shelf);
  expect((await past.said()).told).toBe(fromScratch);
  const differing = new Past();
  await differing.add(facts.slice(0, HALF).map((fact, index) => (index === HALF - 1 ? { ...fact, atMs: fact.atMs + 1 } : fact)), true);
  copyFileSync(differing.shelf, past.shelf);
  expect(await past.said()).toEqual({ told: fromScratch, readAll: true });
});
