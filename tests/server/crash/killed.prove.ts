import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { randomFrom } from '../../../simulators/random.ts';
import { folderForTest } from '../folder.ts';
import { killed, throughCrashes, type Crash, type Evening } from './crashes.ts';
import { demandStrace, killedAtWrite, tracedTo } from './under-strace.ts';
import { endedWhileUpgrading, expectNothingLost, olderFolder } from './upgrading.ts';
import { said } from '../../proved.ts';

const EVENINGS = 10;
const KILLS = 20;
const UPGRADE_KILLS = 40;
const OLD_THROWS = 2000;
const MOST_WRITES = 300;

/** Killed by the kernel as it enters a write of a commit: the half of it is on disk. */
const inMidCommit: Crash = {
  runBy: (random) => killedAtWrite(2 + Math.floor(MOST_WRITES * random.uniform())),
  end: () => Promise.resolve(),
};

beforeAll(demandStrace);

describe.each([['at random moments', killed], ['in mid-commit', inMidCommit]])('a server killed %s', (name, crash) => {
  test(`${EVENINGS * KILLS} times loses nothing that it acknowledged and stores nothing twice`, async () => {
    const evenings: Evening[] = [];
    // oxlint-disable-next-line no-await-in-loop -- one server at a time, so that each has the machine to itself
    for (let seed = 1; seed <= EVENINGS; seed += 1) evenings.push(await throughCrashes(seed, KILLS, crash));
    const total = (of: (evening: Evening) => number): number => evenings.reduce((sum, evening) => sum + of(evening), 0);
    said(`${EVENINGS * KILLS} kills ${name}: ${total((one) => one.acknowledged)} acknowledged throws and ${total((one) => one.notes)} statements kept, each once, in order; ${total((one) => one.stillborn)} kills came before the server was ready`);
    expect(total((one) => one.acknowledged)).toBeGreaterThan(EVENINGS * KILLS);
  });
});

test(`a server killed ${UPGRADE_KILLS} times at any write of an upgrade loses nothing, and the next one upgrades`, async () => {
  const { again } = olderFolder(OLD_THROWS);
  const trace = path.join(folderForTest(), 'trace');
  await endedWhileUpgrading(again(), tracedTo(trace));
  const writes = readFileSync(trace, 'latin1').split('\n').filter((line) => /^\d+ +pwrite64\(/.test(line)).length;
  expect(writes).toBeGreaterThan(100);
  const random = randomFrom(1, 'upgrades');
  const found = { before: 0, after: 0 };
  for (let kill = 0; kill < UPGRADE_KILLS; kill += 1) {
    const folder = again();
    // oxlint-disable-next-line no-await-in-loop -- as above
    expect(await endedWhileUpgrading(folder, killedAtWrite(1 + Math.floor(writes * random.uniform())))).toBe('SIGKILL');
    found[expectNothingLost(folder, OLD_THROWS)] += 1;
  }
  said(`${UPGRADE_KILLS} kills among the ${writes} writes of an upgrade of ${OLD_THROWS} throws: ${found.before} found the older log again, ${found.after} the newer one, none anything else`);
  expect(found.before).toBeGreaterThan(0);
});
