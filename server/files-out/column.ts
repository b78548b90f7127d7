import type { SessionEntry, Tags, ThrowEntry } from '../../core/session/ledger.ts';
import type { TrialEntry } from '../../core/session/trial-entry.ts';
import type { ThrowView } from '../../core/facts/views.ts';
import type { Quantity } from './units.ts';

/** All that is known of one throw of a session, unrounded. */
export interface ThrowKnown {
  readonly mound: string;
  readonly session: SessionEntry;
  readonly entry: ThrowEntry;
  readonly tags: Tags;
  readonly trial: TrialEntry | null;
  readonly view: ThrowView;
}

export type Cell = string | number | boolean | Date | null;

/** `text`, a whole number, a number, yes or no, or a moment. */
export type CellType = 'text' | 'integer' | 'number' | 'truth' | 'moment';

export interface Column {
  /** Without its unit, which the name in a file ends in where it has a `quantity`. */
  readonly name: string;
  readonly type: CellType;
  readonly quantity?: Quantity;
  /** Of a number that has the same unit in every system: for the page about exports. */
  readonly unit?: string;
  /** `name`: left out where no names are wanted; `code`: a code in its place, since ids are made of names and people write names. */
  readonly tells?: 'name' | 'code';
  readonly meaning: string;
  /** The value in SI; of a number that is not there, why not. */
  readonly of: (thrown: ThrowKnown) => Cell;
}
