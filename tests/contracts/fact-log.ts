import { describe, expect, onTestFinished, test } from 'vitest';
import type { Fact } from '../../core/facts/fact.ts';
import type { FactLog } from '../../server/log/fact-log.ts';
import { corrected, measured, opened, summary } from '../server/frames.ts';

/** A place where a log can be opened, closed and opened again with what it held. */
export interface LogPlace {
  open(): FactLog;
}

const byDevice = (said: ReturnType<typeof measured>, mound = 'north-1') => ({ mound, by: 'device:eye-1', said });
const refusal = (sequence: number | null, settles = true) => ({
  mound: 'north-1', device: 'eye-1', run: 'run-a', sequence, code: 'impossible', path: 'body', sentence: 'It cannot be.', settles, frame: '{}',
});

/** What every fact log promises. `newPlace` gives an empty one. */
export function factLogContract(name: string, newPlace: () => LogPlace): void {
  function openLog(place = newPlace()): FactLog {
    const log = place.open();
    onTestFinished(() => log.close());
    return log;
  }

  describe(`a fact log in ${name}`, () => {
    test('gives each mound its own places from 1 without holes', async () => {
      const log = openLog();
      const replies = await Promise.all([
        log.append(byDevice(measured(1))),
        log.append(byDevice(measured(2), 'south-2')),
        log.append(byDevice(measured(3))),
      ]);
      expect(replies).toEqual([
        { kind: 'stored', mound: 'north-1', place: 1, again: false },
        { kind: 'stored', mound: 'south-2', place: 1, again: false },
        { kind: 'stored', mound: 'north-1', place: 2, again: false },
      ]);
      expect(log.mounds()).toEqual(['north-1', 'south-2']);
      expect([...log.read('north-1', 1)].map(({ place }) => place)).toEqual([2]);
      expect(['north-1', 'south-2', 'east-3'].map((mound) => log.newest(mound))).toEqual([2, 1, 0]);
    });

    test('reads after reopening what it was told, word for word, under the same id', async () => {
      const place = newPlace();
      const first = place.open();
      const said = measured(1, summary(84.5));
      await first.append(byDevice(said));
      await first.append({ mound: 'north-1', by: 'coach', said: opened(), request: 'request-1' });
      const facts = [...first.read('north-1', 0)];
      const { id } = first;
      first.close();
      const second = openLog(place);
      expect(second.id).toBe(id);
      expect([...second.read('north-1', 0)]).toEqual(facts);
      expect(facts.map((fact) => fact.said)).toEqual([said, opened()]);
      expect(facts.map(({ by, version }) => [by, version])).toEqual([['device:eye-1', 1], ['coach', 1]]);
    });

    test('takes many at once in one go, behind what was waiting, and tells of each; none where one is there already', async () => {
      const log = openLog();
      const told: string[] = [];
      log.onAppended(({ place, said }) => void told.push(`${place} ${said.kind}`));
      const waiting = log.append(byDevice(measured(1)));
      const entry = (request: string) => ({ mound: 'north-1', by: 'coach', said: { kind: 'session-closed', session: request } as const, request });
      expect(log.appendAll([entry('many-1-of-them'), entry('many-2-of-them')])).toEqual({ kind: 'stored', facts: 2 });
      expect(await waiting).toMatchObject({ place: 1 });
      expect(told).toEqual(['1 throw-measured', '2 session-closed', '3 session-closed']);
      expect(log.appendAll([entry('many-3-of-them'), entry('many-2-of-them')])).toEqual({ kind: 'known' });
      expect([...log.read('north-1', 0)]).toHaveLength(3);
      expect(log.appendAll([entry('many-3-of-them')])).toEqual({ kind: 'stored', facts: 1 });
      expect([...log.read('north-1', 3)].map(({ place }) => place)).toEqual([4]);
      log.close();
      expect(log.appendAll([entry('many-4-of-them')])).toMatchObject({ kind: 'failed' });
    });

    test('writes what was still waiting before it closes, and nothing afterwards', async () => {
      const place = newPlace();
      const log = place.open();
      const waiting = log.append(byDevice(measured(1)));
      log.close();
      expect(await waiting).toMatchObject({ kind: 'stored', place: 1 });
      expect(await log.append(byDevice(measured(2)))).toMatchObject({ kind: 'failed' });
      expect([...openLog(place).read('north-1', 0)]).toHaveLength(1);
    });

    test('tells of each fact once, in order, and only when it can be read', async () => {
      const log = openLog();
      const seen: Fact[] = [];
      const stop = log.onAppended((fact) => {
        seen.push(fact);
        expect([...log.read(fact.mound, fact.place - 1)].length).toBeGreaterThan(0);
      });
      await Promise.all([log.append(byDevice(measured(1))), log.append(byDevice(measured(1))), log.append(byDevice(measured(2)))]);
      stop();
      await log.append(byDevice(measured(3)));
      expect(seen.map(({ place }) => place)).toEqual([1, 2]);
    });

    test('stores a throw that is sent twice once and answers it twice, in one turn or in two', async () => {
      const log = openLog();
      const [first, second] = await Promise.all([log.append(byDevice(measured(7))), log.append(byDevice(measured(7)))]);
      const third = await log.append(byDevice(measured(7)));
      expect([first, second, third].map((reply) => reply)).toEqual([
        { kind: 'stored', mound: 'north-1', place: 1, again: false },
        { kind: 'stored', mound: 'north-1', place: 1, again: true },
        { kind: 'stored', mound: 'north-1', place: 1, again: true },
      ]);
      expect([...log.read('north-1', 0)]).toHaveLength(1);
    });

    test.each([
      ['another body', measured(7, summary(91))],
      ['another time', measured(7, summary(), { time: 2000 })],
      ['other units', measured(7, summary(), { units: { distance: 'ft', speed: 'mph', movement: 'in' } })],
      ['a correction', corrected(7, 6, summary())],
    ])('keeps the stored throw when the same number comes with %s', async (_, other) => {
      const log = openLog();
      await log.append(byDevice(measured(6)));
      await log.append(byDevice(measured(7)));
      expect(await log.append(byDevice(other))).toMatchObject({ kind: 'conflict', code: 'body-differs', path: 'sequence', final: true });
      expect([...log.read('north-1', 0)].map(({ said }) => said)).toEqual([measured(6), measured(7)]);
    });

    test('takes the same number of another run or another device for another throw', async () => {
      const log = openLog();
      await log.append(byDevice(measured(1)));
      await log.append(byDevice(measured(1, summary(70), { run: 'run-b' })));
      await log.append(byDevice(measured(1, summary(71), { device: 'eye-2' })));
      expect([...log.read('north-1', 0)]).toHaveLength(3);
    });

    test('puts a correction into the log of the throw it corrects, wherever the device stands now', async () => {
      const log = openLog();
      await log.append(byDevice(measured(1)));
      expect(await log.append(byDevice(corrected(2, 1), 'south-2'))).toEqual({ kind: 'stored', mound: 'north-1', place: 2, again: false });
      expect(log.mounds()).toEqual(['north-1']);
    });

    test('accepts a correction in the same turn as its throw', async () => {
      const log = openLog();
      const replies = await Promise.all([log.append(byDevice(measured(1))), log.append(byDevice(corrected(2, 1)))]);
      expect(replies.map(({ kind }) => kind)).toEqual(['stored', 'stored']);
    });

    test('asks to wait with a correction whose throw is not there yet, and settles one that can never be', async () => {
      const log = openLog();
      expect(await log.append(byDevice(corrected(8, 7)))).toMatchObject({ code: 'nothing-to-correct', final: false });
      expect(log.settled('eye-1', 'run-a')).toEqual({ through: 0, gaps: [] });
      await log.refuse(refusal(7));
      expect(await log.append(byDevice(corrected(8, 7)))).toMatchObject({ code: 'nothing-to-correct', final: true });
      await log.append(byDevice(measured(1)));
      await log.append(byDevice(corrected(2, 1)));
      expect(await log.append(byDevice(corrected(3, 2)))).toMatchObject({ code: 'nothing-to-correct', path: 'corrects.sequence', final: true });
    });

    test('knows how far a run is settled: a lost 7 with a stored 8 is a gap', async () => {
      const log = openLog();
      expect(log.settled('eye-1', 'run-a')).toEqual({ through: 0, gaps: [] });
      for (const sequence of [1, 2, 3, 4, 5, 6, 8]) await log.append(byDevice(measured(sequence)));
      expect(log.settled('eye-1', 'run-a')).toEqual({ through: 6, gaps: [[7, 7]] });
      await log.append(byDevice(measured(7)));
      expect(log.settled('eye-1', 'run-a')).toEqual({ through: 8, gaps: [] });
    });

    test('counts a finally refused number as settled, and one that may come again as open', async () => {
      const log = openLog();
      await log.append(byDevice(measured(1)));
      await log.refuse(refusal(2));
      await log.refuse(refusal(3, false));
      await log.append(byDevice(measured(4)));
      expect(log.settled('eye-1', 'run-a')).toEqual({ through: 2, gaps: [[3, 3]] });
      expect(log.find({ device: 'eye-1', run: 'run-a', sequence: 2 })).toEqual({ kind: 'refused' });
      expect(log.find({ device: 'eye-1', run: 'run-a', sequence: 3 })).toBeNull();
      expect(log.find({ device: 'eye-1', run: 'run-a', sequence: 4 })).toEqual({ kind: 'stored', mound: 'north-1', place: 2 });
    });

    test('refuses a refused number for good, and keeps a stored one stored when a broken frame claims its number', async () => {
      const log = openLog();
      await log.refuse(refusal(1));
      expect(await log.append(byDevice(measured(1)))).toMatchObject({ kind: 'conflict', code: 'refused-before', final: true });
      await log.append(byDevice(measured(2)));
      await log.refuse(refusal(2));
      expect(log.find({ device: 'eye-1', run: 'run-a', sequence: 2 })).toMatchObject({ kind: 'stored' });
    });

    test('counts refusals by code, across reopening', async () => {
      const place = newPlace();
      const log = place.open();
      await Promise.all([log.refuse(refusal(1)), log.refuse(refusal(1)), log.refuse({ ...refusal(null, false), code: 'not-json', frame: 'a\u0000b\ud800' })]);
      log.close();
      expect(openLog(place).refusals()).toEqual({ impossible: 2, 'not-json': 1 });
    });

    test('stores a coach request once however often it is said, and refuses its id for another statement', async () => {
      const log = openLog();
      const entry = { mound: 'north-1', by: 'coach', said: opened(), request: 'request-1' };
      expect(log.knowsRequest('request-1')).toBe(false);
      const [first, second] = await Promise.all([log.append(entry), log.append(entry)]);
      expect(first).toMatchObject({ kind: 'stored', place: 1, again: false });
      expect(second).toMatchObject({ kind: 'stored', place: 1, again: true });
      expect(log.knowsRequest('request-1')).toBe(true);
      expect(await log.append({ ...entry, said: opened('s-2') })).toMatchObject({ kind: 'conflict', code: 'request-differs' });
      expect([...log.read('north-1', 0)]).toHaveLength(1);
    });
  });
}
