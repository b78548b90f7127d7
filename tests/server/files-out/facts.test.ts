import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, sessionIn, type Ledger } from '../../../core/session/ledger.ts';
import { moundView } from '../../../core/session/view.ts';
import { factsIn } from '../../../server/files-out/read-facts.ts';
import { bringFacts } from '../../../server/log/bring-facts.ts';
import { openToRead } from '../../../server/log/read-beside.ts';
import { openSqliteLog } from '../../../server/log/sqlite-log.ts';
import { busyDay } from '../../parity/sessions.ts';
import { folderForTest } from '../folder.ts';
import { linesOf, logOf } from './given-out.ts';

async function* oneByOne(lines: readonly string[]): AsyncGenerator<string> {
  yield* lines;
}

/** Brings a file into an empty data folder and reads what stands there then. */
async function broughtInto(folder: string, lines: readonly string[]): Promise<Map<string, Fact[]>> {
  expect(await bringFacts(folder, factsIn(oneByOne(lines)), { nowMs: 1_800_000_000_000, id: 'log-of-copies' })).toMatchObject({ kind: 'brought', facts: lines.length - 1 });
  const opened = openToRead(folder);
  if (opened.kind === 'failed') throw new Error(opened.sentence);
  const facts = new Map(opened.log.mounds().map((mound) => [mound, [...opened.log.read(mound, 0)]]));
  opened.close();
  return facts;
}

const folded = (facts: readonly Fact[]): Ledger => facts.reduce(foldFact, emptyLedger(facts[0]!.mound));

const north = busyDay(3, 'north-1', 'path', 25);
const south = busyDay(4, 'south-2', 'summary', 90);
const log = logOf([...north.facts, ...south.facts]);

describe('All facts given out', () => {
  test('come back into an empty data folder as they were, and every session shows what it showed', async () => {
    const lines = await linesOf(log);
    expect(JSON.parse(lines[0]!)).toMatchObject({ kind: 'readme', of: 'all', log: 'log-1', facts: north.facts.length + south.facts.length });
    const folder = folderForTest();
    const brought = await broughtInto(folder, lines);
    for (const day of [north, south]) {
      const facts = brought.get(day.facts[0]!.mound)!;
      expect(facts).toEqual(day.facts);
      const [before, after] = [folded(day.facts), folded(facts)];
      for (const session of [...day.sessions, null]) expect(moundView(after, session)).toEqual(moundView(before, session));
    }
    // Given out once more they are the same file, but for the name of the log.
    const opened = openToRead(folder);
    if (opened.kind === 'failed') throw new Error(opened.sentence);
    const parsed = (some: readonly string[]): unknown[] => some.slice(1).map((line) => JSON.parse(line) as unknown);
    expect(parsed(await linesOf(opened.log))).toEqual(parsed(lines));
    opened.close();
  });

  test('leave every number of a device settled where they come in', async () => {
    const folder = folderForTest();
    await broughtInto(folder, await linesOf(log));
    const opened = openSqliteLog({ file: path.join(folder, 'facts.db'), nowMs: () => 1, newId: () => 'log-2', onTrouble(error) { throw error; } });
    if (opened.kind === 'failed') throw new Error(opened.sentence);
    for (const { mound, place, by, said } of south.facts) {
      if (said.kind !== 'throw-measured') continue;
      expect(await opened.log.append({ mound, by, said })).toEqual({ kind: 'stored', mound, place, again: true });
    }
    opened.log.close();
  });

  test('are refused by a folder that holds facts, and where the file is cut short, out of order or no such file', async () => {
    const lines = await linesOf(logOf(south.facts));
    const folder = folderForTest();
    await broughtInto(folder, lines);
    const into = (where: string, some: readonly string[]) => bringFacts(where, factsIn(oneByOne(some)), { nowMs: 1, id: 'log-3' });
    expect(await into(folder, lines)).toEqual({ kind: 'failed', sentence: `The log in ${folder} holds facts already, and facts keep their places; give an empty folder with --data.` });
    const empty = folderForTest();
    await expect(into(empty, lines.slice(0, -1))).rejects.toThrow(`The file holds ${lines.length - 2} facts and says that it has ${lines.length - 1}; it was broken off or changed, so export it again.`);
    await expect(into(empty, [])).rejects.toThrow('The file is empty.');
    await expect(into(empty, lines.slice(1))).rejects.toThrow('Line 1, kind: This is no file of facts: its first line does not say so.');
    await expect(into(empty, [lines[0]!, lines[1]!.replace('"place":1', '"place":0')])).rejects.toThrow('Line 2, place: ');
    expect(await into(empty, [lines[0]!, lines[2]!, lines[1]!, ...lines.slice(3)])).toEqual({ kind: 'failed', sentence: 'Place 1 of south-2 comes after place 2; the facts of a mound must stand in the order of its log.' });
    expect(await broughtInto(empty, lines)).toEqual(new Map([['south-2', south.facts]]));
  });
});

describe('The facts of one athlete, and of one session,', () => {
  test('of an athlete come back without anybody else, and the athlete’s sessions show the same throws', async () => {
    const lines = await linesOf(log, { kind: 'athlete', id: 'lio' });
    expect(lines.join('\n')).not.toContain('Mar Okonedo');
    const facts = (await broughtInto(folderForTest(), lines)).get('south-2')!;
    const [before, after] = [folded(south.facts), folded(facts)];
    const own = south.sessions.filter((session) => sessionIn(before, session)!.athlete.id === 'lio');
    expect(own.length).toBeGreaterThan(0);
    for (const session of own) expect(shown(after, session)).toEqual(shown(before, session));
  });

  test('of a session hold what it rests on, and nothing from after it', async () => {
    const whole = folded(south.facts);
    const session = whole.order[0]!;
    const lines = await linesOf(log, { kind: 'session', id: session });
    expect(JSON.parse(lines[0]!)).toMatchObject({ of: 'session', session, athlete: sessionIn(whole, session)!.athlete.id });
    const after = folded((await broughtInto(folderForTest(), lines)).get('south-2')!);
    expect(shown(after, session)).toEqual(shown(whole, session));
  });
});

/** What a session shows, without what the other athletes of the mound did to it: whose turn it was. */
function shown(ledger: Ledger, id: string) {
  const { session, throws } = moundView(ledger, id, Infinity);
  const { active: _, ...rest } = session!;
  return { throws, session: rest };
}
