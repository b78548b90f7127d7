import Database from 'libsql';
import { cpSync, existsSync, mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'vitest';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { folderForTest } from '../folder.ts';
import { forkServer, type RunBy } from '../forked.ts';
import { NO_FACT, OLD_LINES, writeFormat1 } from '../log/format-1.ts';

/** A data folder with an older log of the given number of throws and a few lines before them. */
export function olderFolder(throws: number): { readonly folder: string; again(): string } {
  const folder = path.join(folderForTest(), 'older');
  mkdirSync(folder);
  writeFormat1(path.join(folder, 'facts.db'), throws);
  let copies = 0;
  return {
    folder,
    again() {
      const copy = `${folder}-${copies += 1}`;
      cpSync(folder, copy, { recursive: true });
      return copy;
    },
  };
}

/** Starts a server over the folder and waits for its end, which something else brings about. */
export async function endedWhileUpgrading(folder: string, by?: RunBy, ending: (kill: () => void) => void = () => {}): Promise<NodeJS.Signals | null> {
  const server = forkServer(['--port', '0', '--data', folder], by);
  ending(() => void server.child.kill('SIGKILL'));
  // One that comes to be ready has upgraded before it could be stopped. It goes by itself: a program that watches it would only let go of it.
  void server.firstWord.then((word) => { if (word.kind === 'ready') server.child.disconnect(); });
  return (await server.ended).signal;
}

/** After an end at any moment: a kept copy is whole, and the next start finds every fact and number. */
export function expectNothingLost(folder: string, throws: number): 'before' | 'after' {
  const file = path.join(folder, 'facts.db');
  const kept = path.join(folder, 'backups', 'facts-before-format-2.db');
  if (existsSync(kept)) expect(countsIn(kept)).toMatchObject({ facts: throws + OLD_LINES.length, version: 1 });
  const opened = openSqliteLog({ file, nowMs: () => 0, newId: () => 'new', onTrouble: () => {} });
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  const { log, keptCopy } = opened;
  expect(existsSync(kept)).toBe(true);
  expect(log.id).toBe('an-old-log');
  const held = log.mounds().flatMap((mound) => [...log.read(mound, 0)]);
  expect(held).toHaveLength(throws + OLD_LINES.filter(({ said }) => said !== NO_FACT).length);
  expect(log.settled('eye-3', 'run-a')).toEqual({ through: throws, gaps: [] });
  expect(log.settled('eye-1', 'run-a')).toEqual({ through: 6, gaps: [[7, 7]] });
  log.close();
  expect(countsIn(file)).toMatchObject({ facts: throws + OLD_LINES.length, version: 2 });
  rmSync(folder, { recursive: true });
  return keptCopy === null ? 'after' : 'before';
}

function countsIn(file: string): unknown {
  const database = new Database(file);
  try {
    expect(database.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    return { ...(database.prepare('SELECT (SELECT count(*) FROM facts) AS facts, (SELECT max(version) FROM schema_versions) AS version').get() as object) };
  } finally {
    database.close();
  }
}
