import { expect, test } from 'vitest';
import { weekOf } from './week.ts';

/** A small sample of what week.prove.ts does for a week. */
test('after two days of sessions and viewers no more sockets, timers or files are open than after one', async () => {
  const [first, second] = await weekOf({ days: 2, sessionsOfDay: 2, throwsOfSession: 8, throwsAtHand: 10 });
  expect(second!.handles).toEqual(first!.handles);
});
