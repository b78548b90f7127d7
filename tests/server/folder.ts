import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of its own for the running test, gone afterwards. */
export function folderForTest(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'offpace-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
