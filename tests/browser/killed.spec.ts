import { expect, test } from '@playwright/test';
import type { Fact } from '../../core/facts/fact.ts';
import { easyFrame, FASTBALL } from './by-hand.ts';
import { connectCoach, opening } from './coach.ts';
import { connectDevice } from './device.ts';
import { startProcess, temporaryFolder } from './server.ts';

const THROWS = 60;
/** The server is killed as soon as this many are acknowledged; many more are on their way then. */
const KILL_AFTER = 20;

test('a server killed in mid-stream has, after its restart, every acknowledged throw exactly once', async ({ page }) => {
  const { folder, remove } = temporaryFolder();
  const first = await startProcess(folder);
  const port = Number(new URL(first.address).port);
  const coach = await connectCoach(first, 'north-1');
  await coach.say(opening('s1'));
  await page.goto(`${first.address}/wall/north-1`);
  await expect(page.locator('.wall-count')).toContainText('0 throws');
  coach.close();

  const device = await connectDevice(first);
  const killed = new Promise<void>((resolve) => {
    const watch = (): void => {
      if (device.stored.size >= KILL_AFTER) resolve(first.kill());
      else setImmediate(watch);
    };
    watch();
  });
  // Every tenth throw is sent twice, as a device does that has not heard an answer.
  for (let sequence = 1; sequence <= THROWS; sequence += 1) {
    device.sendOnly({ kind: 'throw', sequence, time: sequence * 1000, body: easyFrame(FASTBALL) });
    if (sequence % 10 === 0) device.sendOnly({ kind: 'throw', sequence, time: sequence * 1000, body: easyFrame(FASTBALL) });
  }
  await killed;
  await device.closed;
  const acknowledged = [...device.stored];
  expect(acknowledged.length).toBeGreaterThanOrEqual(KILL_AFTER);

  const second = await startProcess(folder, port);
  try {
    const afterKill = await storedSequences(second.address);
    expect(new Set(afterKill).size).toBe(afterKill.length);
    expect(acknowledged.filter((sequence) => !afterKill.includes(sequence))).toEqual([]);

    // The device goes on as the protocol says: it asks what is settled, and sends the rest again.
    const again = await connectDevice(second);
    expect(again.welcome.settledThrough).toBe(Math.max(...afterKill));
    expect(again.welcome.gaps).toEqual([]);
    for (let sequence = again.welcome.settledThrough + 1; sequence <= THROWS; sequence += 1) await again.throws(sequence, easyFrame(FASTBALL));
    for (const sequence of acknowledged) await again.throws(sequence, easyFrame(FASTBALL));
    await again.close();
    expect(await storedSequences(second.address)).toEqual(Array.from({ length: THROWS }, (_, index) => index + 1));

    // The Wall that was open all the while has come back by itself, and Playback has them too.
    await expect(page.locator('.wall-count')).toContainText(`${THROWS} throws`);
    await page.goto(`${second.address}/playback/s1`);
    await expect(page.locator('.where')).toContainText(`Throw ${THROWS} of ${THROWS}`);
  } finally {
    await second.stop();
    remove();
  }
});

/** Sequence numbers of the throws in the log, in its order. */
async function storedSequences(address: string): Promise<number[]> {
  const { facts } = (await (await fetch(`${address}/api/sessions/s1`)).json()) as { facts: Fact[] };
  return facts.flatMap(({ said }) => (said.kind === 'throw-measured' ? [said.source.sequence] : []));
}
