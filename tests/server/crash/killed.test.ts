import { existsSync, watch } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { killed, throughCrashes } from './crashes.ts';
import { endedWhileUpgrading, expectNothingLost, olderFolder } from './upgrading.ts';

const THROWS = 10_000;

test('a server killed five times in mid-stream loses nothing that it acknowledged and stores nothing twice', async () => {
  const { acknowledged, notes } = await throughCrashes(1, 5, killed);
  expect(acknowledged).toBeGreaterThan(25);
  expect(notes).toBeGreaterThan(5);
}, 180_000);

test('a server killed while it upgrades an older log leaves it as it was, and the next one upgrades it', async () => {
  const { again } = olderFolder(THROWS);
  for (const moment of ['facts-before-format-2.db.unfinished', 'facts-before-format-2.db']) {
    const folder = again();
    const signal = await endedWhileUpgrading(folder, undefined, (kill) => {
      const watcher = watch(folder, { recursive: true }, () => {
        if (!existsSync(path.join(folder, 'backups', moment))) return;
        watcher.close();
        kill();
      });
    });
    expect(signal).toBe('SIGKILL');
    expect(expectNothingLost(folder, THROWS)).toBe('before');
  }
}, 180_000);
