import { createReadStream, readdirSync } from 'node:fs';
import path from 'node:path';

/** The log itself, what is worked out from it and erased with it, and what belongs to both while they are open. */
const LIVE = /^(?:(?:facts|ledgers)\.db(?:-wal|-shm|-journal)?|in-use.*)$/;

/**
 * Files of a data folder other than the log that still hold an athlete, by path within the folder: backups, copies from before
 * an upgrade, whatever somebody put there. They are looked through byte by byte, so that a damaged one is found too; the
 * statement that opens a session is short enough never to be split over pages.
 */
export async function copiesHolding(dataFolder: string, athlete: string): Promise<string[]> {
  const sought = Buffer.from(JSON.stringify(athlete));
  const files = readdirSync(dataFolder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => path.relative(dataFolder, path.join(entry.parentPath, entry.name)));
  const holding: string[] = [];
  // oxlint-disable-next-line no-await-in-loop -- one disk, one file after the other
  for (const file of files.filter((name) => !LIVE.test(name)).sort()) if (await holds(path.join(dataFolder, file), sought)) holding.push(file);
  return holding;
}

async function holds(file: string, sought: Buffer): Promise<boolean> {
  let end = Buffer.alloc(0);
  for await (const chunk of createReadStream(file, { highWaterMark: 1 << 20 })) {
    const read = Buffer.concat([end, chunk as Buffer]);
    if (read.includes(sought)) return true;
    end = read.subarray(Math.max(0, read.length - sought.length + 1));
  }
  return false;
}
