import { FACT_COLUMNS } from './stored-fact.ts';

export type Value = string | number | null;

/** A table into which rows are inserted, and what is done with one that is there. */
export interface Table {
  readonly name: string;
  readonly columns: readonly string[];
  readonly onConflict?: string;
}

/** The tables that grow with what is said, in the order in which they are written. */
export const TABLES = {
  facts: { name: 'facts', columns: FACT_COLUMNS.split(', ') },
  numbers: { name: 'numbers', columns: ['device', 'run', 'first', 'last', 'kind', 'mound', 'place'], onConflict: 'ON CONFLICT DO UPDATE SET last = excluded.last' },
  requests: { name: 'requests', columns: ['request', 'fingerprint', 'mound', 'place'] },
  refusals: { name: 'refusals', columns: ['at_ms', 'mound', 'device', 'run', 'sequence', 'code', 'path', 'sentence', 'frame'] },
} satisfies Record<string, Table>;

/** Where rows of a table go. */
export interface Into {
  add(...row: Value[]): void;
}

/** Where what is said goes. */
export type Grown = Readonly<Record<keyof typeof TABLES, Into>>;
