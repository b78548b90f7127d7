import { expect, test } from 'vitest';
import { coachAt, openServer, phoneOf, Browser } from '../access/open-server.ts';
import { ATHLETE, opened } from '../frames.ts';

test('giving out and erasing need the coach: neither whoever comes, nor the phone of the athlete, nor a screen on the wall may', async () => {
  const server = await openServer();
  const coach = await coachAt(server);
  const screen = coach.screen();
  await screen.say(opened());
  const phone = await phoneOf(server, coach, 's-1');
  const wall = new Browser(server);
  const { body } = await coach.ask('POST', '/api/grants', { kind: 'viewer', mound: 'north-1' });
  await wall.ask('POST', '/api/open', { secret: body['token'] });
  const tries = async (who: Browser): Promise<number[]> => [
    (await who.ask('GET', '/api/athletes/ana-1/facts')).status,
    (await who.ask('POST', '/api/athletes/ana-1/erase', { name: ATHLETE.name })).status,
  ];
  expect(await tries(new Browser(server))).toEqual([401, 401]);
  expect(await tries(phone)).toEqual([403, 403]);
  expect(await tries(wall)).toEqual([403, 403]);
  await screen.say({ kind: 'session-closed', session: 's-1' });
  expect((await coach.ask('POST', '/api/athletes/ana-1/erase', { name: ATHLETE.name })).body).toMatchObject({ kind: 'erased', sessions: 1 });
  expect((await coach.ask('GET', '/api/athletes')).body).toEqual([]);
});
