import type { ImportedFile } from './import-says.ts';

/** What a file of throws came to when it was read. */
export interface ImportReport {
  readonly file: ImportedFile;
  readonly bytes: number;
  /** Without the head. */
  readonly rows: number;
  readonly good: number;
  readonly refused: number;
  /** How many rows are refused with each code. */
  readonly refusedBecause: Readonly<Record<string, number>>;
  /** That the good rows become. */
  readonly sessions: number;
  readonly athletes: number;
  readonly mounds: readonly string[];
  readonly days: { readonly first: string; readonly last: string } | null;
  /** Sessions that came out of this very file before, and when. */
  readonly earlier: { readonly sessions: number; readonly lastAtMs: number } | null;
}

/** Answer to POST /api/imports/<id>/store. `broken-off`: the sessions so far are in the log. */
export interface StoreAnswer {
  readonly kind: 'stored' | 'broken-off';
  readonly sessions: number;
  readonly throws: number;
}
