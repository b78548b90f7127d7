import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect } from 'vitest';
import type { RunningServer } from '../../../server/serve.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { ScreenClient } from '../screen-client.ts';

/** Who is erased in these tests: every word of hers is like no other. */
export const QUENBY = { ...ATHLETE, id: 'quenby-7f3a', name: 'Quenby Thistlewick' };
export const BEN = { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' };
/** What may stand nowhere afterwards: id, names, sessions, and what was written or measured. */
export const HERS = ['quenby-7f3a', 'Quenby', 'Thistlewick', 'thistle-', 'zibeline', 'mulberry', '83.717', '71.713', '99999.5'];

export const throwOf = (sequence: number, releaseSpeed = 84.5) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: summary(releaseSpeed) });

/** Quenby on two mounds and Ben on one of them, in turn: throws, notes, moved throws, a correction and a refused frame. Both have closed. */
export async function evening(server: RunningServer, token: string): Promise<DeviceClient> {
  const screen = new ScreenClient(server);
  let said = 0;
  const say = async (says: unknown, mound = 'north-1'): Promise<void> => {
    expect(await screen.socket.emitWithAck('say', { request: `evening-${said += 1}`, mound, says })).toEqual({ kind: 'stored', place: expect.any(Number) });
  };
  const { client } = await DeviceClient.greet(server.address, token);
  const thrown = async (sequence: number, speed?: number): Promise<void> => void expect(await client.ask(throwOf(sequence, speed))).toEqual({ kind: 'stored', sequence });
  await say(opened('thistle-0', { athlete: QUENBY }), 'south-2');
  await say({ kind: 'arm-reported', session: 'thistle-0', from: 'bench', said: 'sore', areas: ['elbow'] }, 'south-2');
  await say({ kind: 'session-closed', session: 'thistle-0' }, 'south-2');
  await say(opened('ben-s', { athlete: BEN }));
  await say({ kind: 'intent-set', session: 'ben-s', intent: 'four-seam' });
  for (const sequence of [1, 2, 3]) await thrown(sequence, 88 + sequence);
  await say(opened('thistle-1', { athlete: QUENBY }));
  await say({ kind: 'trial-begun', session: 'thistle-1', intent: 'changeup', grip: null, cue: { words: 'zibeline wrist', focus: null } });
  await thrown(4, 83.717);
  await thrown(5, 89);
  await say({ kind: 'note-written', session: 'thistle-1', text: 'mulberry sleeve', place: null });
  expect(await client.ask({ kind: 'correction', sequence: 6, time: 6000, corrects: { sequence: 4 }, body: summary(71.713) })).toEqual({ kind: 'stored', sequence: 6 });
  expect(await client.ask(throwOf(7, 99999.5))).toMatchObject({ kind: 'refused', final: true });
  const bens = await placeOf(server, 89);
  await say({ kind: 'throws-moved', places: [bens], session: 'ben-s', from: 'thistle-1' });
  await say({ kind: 'session-closed', session: 'thistle-1' });
  await say({ kind: 'mound-passed', session: 'ben-s' });
  await thrown(8, 87);
  await say({ kind: 'note-written', session: 'ben-s', text: 'Ben was early', place: null });
  await say({ kind: 'session-closed', session: 'ben-s' });
  return client;
}

async function placeOf(server: RunningServer, releaseSpeed: number): Promise<number> {
  const response = await fetch(`${server.address}/api/sessions/thistle-1`);
  const { facts } = (await response.json()) as { facts: { place: number; said: { kind: string; body?: { summary?: { releaseSpeed: number } } } }[] };
  return facts.find(({ said }) => said.body?.summary?.releaseSpeed === releaseSpeed)!.place;
}

/** Which of these words stand somewhere in the files of a folder, as bytes. */
export function wordsIn(folder: string, words: readonly string[] = HERS): string[] {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => path.join(entry.parentPath, entry.name));
  const bytes = files.map((file) => readFileSync(file));
  return words.filter((word) => bytes.some((one) => one.includes(word)));
}

export function erase(server: Pick<RunningServer, 'address'>, id = QUENBY.id, name: string = QUENBY.name): Promise<Response> {
  return fetch(`${server.address}/api/athletes/${id}/erase`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ name }) });
}
