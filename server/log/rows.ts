import type { Database, Statement } from 'libsql';
import { TABLES, type Grown, type Into, type Table, type Value } from './tables.ts';

/** Rows to a statement: a call costs more than a row. */
const HANDFUL = 16;

/** Collects rows for one table and inserts them by handfuls; nothing is in the table for certain before `flush`. */
export class Rows implements Into {
  #waiting: Value[][] = [];
  readonly #handful: Statement;
  readonly #single: Statement;

  constructor(database: Database, { name, columns, onConflict = '' }: Table) {
    const row = `(${columns.map(() => '?').join(', ')})`;
    const insert = (rows: number): Statement => database.prepare(`INSERT INTO ${name} (${columns.join(', ')}) VALUES ${Array.from({ length: rows }, () => row).join(', ')} ${onConflict}`);
    this.#handful = insert(HANDFUL);
    this.#single = insert(1);
  }

  add(...row: Value[]): void {
    if (this.#waiting.push(row) < HANDFUL) return;
    this.#handful.run(this.#waiting.flat());
    this.#waiting = [];
  }

  flush(): void {
    for (const row of this.#waiting) this.#single.run(row);
    this.#waiting = [];
  }
}

/** What is said goes into the tables of a database, inside a transaction of the caller; all of it is there after `flush`. */
export function growing(database: Database): Grown & { flush(): void } {
  const facts = new Rows(database, TABLES.facts);
  const numbers = new Rows(database, TABLES.numbers);
  const requests = new Rows(database, TABLES.requests);
  const refusals = new Rows(database, TABLES.refusals);
  const all = [facts, numbers, requests, refusals];
  return { facts, numbers, requests, refusals, flush: () => all.forEach((rows) => rows.flush()) };
}
