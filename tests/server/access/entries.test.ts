import { expect, test } from 'vitest';
import { writeEntries } from '../../../server/access/entries.ts';
import { handClock } from '../hand-clock.ts';
import { opened } from '../frames.ts';
import { Browser, coachAt, openServer, phoneOf } from './open-server.ts';

interface Line {
  readonly msg: string;
  readonly by?: string;
  readonly code?: string;
  readonly unwrittenBefore?: number;
}

test('the diary says how people came in and were refused, and neither who they are nor from where', async () => {
  const lines: string[] = [];
  const server = await openServer({ logLevel: 'info', diaryTo: { write: (line: string) => void lines.push(line) } });
  const stranger = new Browser(server);
  await stranger.ask('POST', '/api/sign-in', { name: 'Tomasina Reed', passphrase: 'a wrong guess of hers' });
  const coach = await coachAt(server, 'Ines Marrow');
  await coach.screen().say(opened('s-1'));
  const { body } = await coach.ask('POST', '/api/grants', { kind: 'viewer', mound: 'north-1' });
  await new Browser(server).ask('POST', '/api/open', { secret: body['token'] });
  await phoneOf(server, coach, 's-1');
  await stranger.ask('POST', '/api/open', { secret: 'a code that nobody gave' });
  await coach.ask('POST', '/api/sign-out');
  await stranger.ask('POST', '/api/sign-out');

  const door = lines.map((line) => JSON.parse(line) as Line).filter(({ msg }) => msg.startsWith('somebody'));
  expect(door.map(({ msg, by, code }) => [msg, by, code].filter((word) => word !== undefined).join(' / '))).toEqual([
    'somebody was refused at the door / passphrase / wrong-passphrase',
    'somebody was let in / passphrase',
    'somebody was let in / link',
    'somebody was let in / code',
    'somebody was refused at the door / code / link-over',
    'somebody signed out',
  ]);
  expect(lines.filter((line) => /ines|marrow|tomasina|reed|guess|nobody gave|s-1|127\.0\.0\.1/i.test(line) && !line.includes('"listening"'))).toEqual([]);
});

test('whoever guesses does not fill the diary: refusals beyond twenty are counted in the next line', () => {
  const clock = handClock();
  const lines: object[] = [];
  const write = (line: unknown): void => void lines.push(line as object);
  const entries = writeEntries({ info: write, warn: write } as never, clock.nowMs);
  for (let guess = 0; guess < 30; guess += 1) entries.wasRefused('passphrase', 'too-many-attempts');
  expect(lines).toHaveLength(20);
  clock.advance(10_000);
  entries.wasRefused('passphrase', 'wrong-passphrase');
  expect(lines.slice(20)).toEqual([{ by: 'passphrase', code: 'wrong-passphrase', unwrittenBefore: 10 }]);
});
