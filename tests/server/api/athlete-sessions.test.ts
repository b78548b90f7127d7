import { expect, test } from 'vitest';
import type { SessionListing } from '../../../core/facts/wire.ts';
import { ATHLETE, opened } from '../frames.ts';
import { handClock } from '../hand-clock.ts';
import { get, serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

test("an athlete's sessions are listed over all mounds, newest first, those of others apart", async () => {
  const clock = handClock();
  const server = await serverForTest({ clock });
  const screen = new ScreenClient(server);
  const say = async (mound: string, says: unknown, request: string): Promise<void> => {
    expect(await screen.socket.emitWithAck('say', { request: `request-${request}`, mound, says })).toMatchObject({ kind: 'stored' });
  };
  await say('north-1', opened('n-1'), 'n1');
  clock.advance(60_000);
  await say('north-1', opened('n-2', { athlete: { ...ATHLETE, id: 'ben-2', name: 'Ben Ortiz' } }), 'n2');
  clock.advance(60_000);
  await say('south-2', opened('s-1'), 's1');
  expect((await get<SessionListing[]>(server, '/api/athletes/ana-1/sessions')).map(({ id, mound }) => [id, mound])).toEqual([['s-1', 'south-2'], ['n-1', 'north-1']]);
  expect(await get(server, '/api/athletes/nobody/sessions')).toMatchObject({ code: 'unknown-athlete' });
});
