import path from 'node:path';
import Database from 'libsql';
import { expect, test } from 'vitest';
import { openDiary } from '../../server/diary.ts';
import { DeviceClient } from './device-client.ts';
import { folderForTest } from './folder.ts';
import { ATHLETE, opened, summary } from './frames.ts';
import { serverForTest } from './running.ts';
import { ScreenClient } from './screen-client.ts';

const PERSON = { ...ATHLETE, id: 'quillon-zab-77', name: 'Quillon Zabrowski', birthYear: 2011 };
const NOTE = 'Wrist stiff since the tournament in Ashgrove';
const CUE = 'shake the rain off';
/** Whatever tells who threw, also in pieces. */
const OF_THE_PERSON = /quillon|zabrowski|\b2011\b|wrist|ashgrove|rain off|elbow|Tomasina/i;

/** What a server writes of itself, line by line. */
function diary() {
  const lines: string[] = [];
  return { lines, to: { write: (line: string) => void lines.push(line) } };
}

test('a whole evening, its mistakes and its faults leave no athlete in the diary', async () => {
  const { lines, to } = diary();
  const dataFolder = folderForTest();
  const server = await serverForTest({ dataFolder, logLevel: 'info', diaryTo: to });
  const session = `${PERSON.id}-evening`;
  const coach = new ScreenClient(server);
  const athlete = new ScreenClient(server, { speaker: 'athlete' });
  await Promise.all([coach.watch(), athlete.watch()]);
  const { client } = await DeviceClient.greet(server.address, server.token);
  const says = [
    opened(session, { athlete: PERSON }),
    { kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words: CUE, focus: 'external' } },
    { kind: 'note-written', session, text: NOTE, place: null },
  ];
  for (const one of says) expect(await coach.say(one)).toMatchObject({ kind: 'stored' });
  for (let sequence = 1; sequence <= 20; sequence += 1) await client.ask({ kind: 'throw', sequence, time: sequence, body: summary(80 + (sequence % 5)) });
  await athlete.say({ kind: 'arm-reported', session, from: 'glance', said: 'pain', areas: ['elbow'] });
  // What people and devices do wrong.
  await coach.say({ ...opened(session, { athlete: PERSON }), sesion: PERSON.name });
  await coach.say(opened(session, { athlete: PERSON }));
  await client.ask({ kind: 'throw', sequence: 21, time: 21, body: summary(400), note: PERSON.name });
  await client.ask(`{"kind":"throw","athlete":"${PERSON.name}"`);
  for (const address of [`/api/athletes/${PERSON.id}/days`, `/api/sessions/found?text=${PERSON.name}`, `/api/sessions/${session}`, `/report/${session}`, `/nobody/${PERSON.name}`, `/wall/%E0%A4%A?${PERSON.name}`]) await fetch(`${server.address}${address}`);
  for (const address of ['/api/grants', '/api/open', '/api/sign-in']) {
    await fetch(`${server.address}${address}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: `{"name":"${PERSON.name}",` });
    await fetch(`${server.address}${address}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ name: 'Tomasina', secret: PERSON.name }) });
  }
  await coach.say({ kind: 'session-closed', session });
  await client.leave();
  await server.close();
  damage(dataFolder);
  const again = await serverForTest({ dataFolder, logLevel: 'info', diaryTo: to });
  await again.close();

  const said = lines.map((line) => (JSON.parse(line) as { msg: string }).msg);
  for (const event of ['listening', 'a device came', 'a device left', 'something failed', 'stopped']) expect(said).toContain(event);
  expect(lines.filter((line) => OF_THE_PERSON.test(line))).toEqual([]);
});

/** Cuts the fact that opened the session in the middle of the name. */
function damage(dataFolder: string): void {
  const database = new Database(path.join(dataFolder, 'facts.db'));
  database.exec('DROP TRIGGER facts_never_change');
  const { changes } = database.prepare("UPDATE facts SET said = substr(said, 1, instr(said, 'Zabrowski') + 4) WHERE place = 1").run();
  database.close();
  expect(changes).toBe(1);
}

test('an error whose message quotes what it stumbled over is written without it, with the place where it arose', () => {
  const { lines, to } = diary();
  const written = openDiary('info', to);
  for (const stumble of [() => JSON.parse(`{"name":${PERSON.name}`), () => (undefined as unknown as Record<string, string>)[PERSON.name]]) {
    try {
      stumble();
    } catch (error) {
      expect((error as Error).message).toMatch(/Quillon/);
      written.error({ err: error }, 'something failed');
    }
  }
  expect(lines).toHaveLength(2);
  expect(lines[0]).toContain('SyntaxError');
  expect(lines[1]).toContain('diary.test.ts');
  expect(lines.filter((line) => OF_THE_PERSON.test(line))).toEqual([]);
});

test('what we, the system and the disk say of a failure stays in the diary', () => {
  const { lines, to } = diary();
  const written = openDiary('info', to);
  written.error({ err: new Error('The fact at place 4 of north-1 is damaged.') });
  written.error({ err: Object.assign(new Error('disk I/O error'), { code: 'SQLITE_IOERR' }) });
  expect(lines[0]).toContain('The fact at place 4 of north-1 is damaged.');
  expect(lines[1]).toContain('SQLITE_IOERR');
});
