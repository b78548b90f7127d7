import { closeSync, fsyncSync, openSync, renameSync, writeSync } from 'node:fs';

/** Replaces a file at once, so that a power cut leaves the old one or the new one; only its owner can read it. */
export function writeWhole(file: string, text: string): void {
  const next = `${file}.next`;
  const opened = openSync(next, 'w', 0o600);
  try {
    writeSync(opened, text);
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
  renameSync(next, file);
}
