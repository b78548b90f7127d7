import { spawnSync } from 'node:child_process';
import { onTestFinished } from 'vitest';
import { folderForTest } from '../folder.ts';

/**
 * A disk of a few megabytes for the running test, taken away afterwards.
 * @throws for anybody but root, because only root may add a disk
 */
export function smallDisk(megabytes: number): { readonly folder: string; remount(how: 'ro' | 'rw'): void } {
  if (process.getuid?.() !== 0) throw new Error('Only root can mount the small disk that this check fills; run it as root.');
  const folder = folderForTest();
  mount('-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', folder);
  onTestFinished(() => void spawnSync('umount', ['-l', folder]));
  return { folder, remount: (how) => mount('-o', `remount,${how}`, folder) };
}

function mount(...args: string[]): void {
  const { status, stderr } = spawnSync('mount', args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`mount ${args.join(' ')}: ${stderr}`);
}
