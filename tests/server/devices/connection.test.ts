import { expect, test } from 'vitest';
import type { ServerFrame } from '../../../core/facts/frames.ts';
import { Connection, type DoorSide } from '../../../server/devices/connection.ts';
import type { Wire } from '../../../server/devices/wire.ts';
import type { AppendReply, FactLog, RefuseReply } from '../../../server/log/fact-log.ts';
import { hello, summary } from '../frames.ts';

const failed = { kind: 'failed', sentence: 'The disk is full.' } as const;
const frame = (sequence: number, body: unknown = summary()) => Buffer.from(JSON.stringify({ kind: 'throw', sequence, time: 1, body }));

/** A connection over a log whose answers the test gives. */
async function connected(answers: { append(): Promise<AppendReply>; refuse(): Promise<RefuseReply> }) {
  const sent: ServerFrame[] = [];
  const moves: string[] = [];
  const wire: Wire = { send: (one) => void sent.push(one), close: (code) => void moves.push(`close ${code}`), pause: () => void moves.push('pause'), resume: () => void moves.push('resume') };
  const log = { ...answers, find: () => null, settled: () => ({ through: 0, gaps: [] }) } as unknown as FactLog;
  const door: DoorSide = { log, stageOf: () => null, unknown: () => null, reaches: () => true, admit: () => null, heard: () => {}, frameCame: () => () => {}, refused: () => {}, forNothing: () => 'goes-on', isKeptOff: () => false };
  const connection = new Connection(wire, door);
  await connection.receive(Buffer.from(JSON.stringify(hello('any'))), false);
  sent.length = 0;
  return { connection, sent, moves };
}

test('a throw that could not be written is never acknowledged, and the device is asked to send it again', async () => {
  const { connection, sent } = await connected({ append: async () => failed, refuse: async () => failed });
  await connection.receive(frame(5), false);
  expect(sent).toEqual([{ kind: 'refused', sequence: 5, code: 'storage-failed', path: '', sentence: 'The disk is full.', final: false }]);
});

test('a refusal that could not be written settles nothing: the number may come again', async () => {
  const { connection, sent } = await connected({ append: async () => failed, refuse: async () => failed });
  await connection.receive(frame(5, summary(400)), false);
  expect(sent).toEqual([expect.objectContaining({ sequence: 5, code: 'storage-failed', final: false })]);
});

test('nothing is said about a throw before the disk has it', async () => {
  let commit: (reply: AppendReply) => void = () => {};
  const { connection, sent } = await connected({ append: () => new Promise((resolve) => { commit = resolve; }), refuse: async () => failed });
  const done = connection.receive(frame(1), false);
  expect(sent).toEqual([]);
  commit({ kind: 'stored', mound: 'north-1', place: 1, again: false });
  await done;
  expect(sent).toEqual([{ kind: 'stored', sequence: 1 }]);
});

test('a device that is faster than the disk is read no further until half of what waits is written', async () => {
  const commits: (() => void)[] = [];
  const { connection, moves } = await connected({
    append: () => new Promise((resolve) => { commits.push(() => resolve({ kind: 'stored', mound: 'north-1', place: 1, again: false })); }),
    refuse: async () => failed,
  });
  const all = Array.from({ length: 256 }, (_, index) => connection.receive(frame(index + 1), false));
  expect(moves).toEqual(['pause']);
  for (const commit of commits.slice(0, 127)) commit();
  await Promise.all(all.slice(0, 127));
  expect(moves).toEqual(['pause']);
  for (const commit of commits.slice(127)) commit();
  await Promise.all(all);
  expect(moves).toEqual(['pause', 'resume']);
});
