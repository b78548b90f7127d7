import type { ImportedFile } from './import-says.ts';

/** What the throws of a file name as their run. It stands apart from the schemas because the screens fold, and check nothing. */
export function runOf({ sha256 }: ImportedFile): string {
  return sha256.slice(0, 16);
}
