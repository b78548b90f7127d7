import { expect, test } from 'vitest';
import { systemClock } from '../../device/clock.ts';
import { replay } from '../../device/replay.ts';
import { freePort } from '../server/free-port.ts';

const HOUR_MS = 3_600_000;

function thrownAt(atMs: number, sequence: number) {
  const source = { device: 'reader', run: 'run-1', sequence, time: atMs, sight: 'spin-only', axis: 'measured', units: { distance: 'ft', speed: 'mph', movement: 'in' } } as const;
  return { atMs, source, body: { summary: { releaseSpeed: 80 } } };
}

test('a replay ends when it is told to, though its server is away and a throw was never answered', async () => {
  const stop = new AbortController();
  const replayed = await replay({
    url: `ws://127.0.0.1:${await freePort()}/device`, mound: 'north-1', token: 'secret', run: 'replay-1', speed: 1,
    throws: [thrownAt(0, 1), thrownAt(HOUR_MS, 2)],
    clock: systemClock, random: { uniform: () => 0.5 }, onAnswered() {}, stop: stop.signal,
    // It has recorded the first throw, waits for the second, and says that nobody answers.
    print: () => stop.abort(),
  });
  expect(replayed).toEqual({ stored: 0, refused: 0, trouble: null });
});
