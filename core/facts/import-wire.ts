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
  /** What stands for an athlete whom nobody has chosen yet; the first hundred of them. */
  readonly strangers: readonly string[];
  /** Sessions that came out of this very file before, and when. */
  readonly earlier: { readonly sessions: number; readonly lastAtMs: number } | null;
}

/** An import that counts: what came out of one file at once. */
export interface BroughtImport {
  readonly id: string;
  readonly fileName: string;
  /** When it arrived. */
  readonly atMs: number;
  /** Who brought it, as facts are signed. */
  readonly by: string;
  readonly sessions: number;
  readonly throws: number;
  /** Names, of each athlete once. */
  readonly athletes: readonly string[];
  readonly mounds: readonly string[];
}

/** Answer to POST /api/imports/<id>/withdraw. */
export interface WithdrawAnswer {
  readonly kind: 'withdrawn';
  readonly sessions: number;
  readonly throws: number;
}

/** A row of a file that is not taken: where it stands and why not. */
export interface RowRefusal {
  readonly line: number;
  readonly code: string;
  readonly column: string;
  readonly sentence: string;
}

/** Answer to PUT /api/imports/<id>/file: the first refused rows with it. */
export interface CheckAnswer extends ImportReport {
  readonly shown: readonly RowRefusal[];
}

/** Answer to POST /api/imports/<id>/store. `broken-off`: the sessions so far are in the log. */
export interface StoreAnswer {
  readonly kind: 'stored' | 'broken-off';
  readonly sessions: number;
  readonly throws: number;
}
