import type { Because } from './guess.ts';
import type { Layout } from './layout.ts';
import type { Cell } from './read-cell.ts';

/** As much of a file as is looked at. */
export const HEAD_BYTES = 64 * 1024;

/** What the beginning of a file shows: how it is written, its first rows, and what its columns are likely to be. */
export interface FileLook {
  readonly layout: Layout;
  /** One for each column. */
  readonly because: readonly Because[];
  readonly rows: readonly (readonly Cell[])[];
  /** Names files of this shape: the same columns in the same order. */
  readonly shape: string;
}

/** How the columns of one shape of file are read, as a coach once said. It holds nothing of any athlete. */
export interface Recipe {
  readonly id: string;
  readonly name: string;
  readonly shape: string;
  readonly layout: Layout;
}

/** Answer to POST /api/imports/look. `recipe` is what was once said of files of this shape; null where nobody did. */
export interface LookAnswer extends FileLook {
  readonly recipe: Recipe | null;
}
