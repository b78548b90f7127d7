import type { Database, Statement } from 'libsql';

/** Rows to a statement: a call costs more than a row. */
const HANDFUL = 16;

type Value = string | number | null;

/** Collects rows for one table and inserts them by handfuls; nothing is in the table for certain before `flush`. */
export class Rows {
  #waiting: Value[][] = [];
  readonly #handful: Statement;
  readonly #single: Statement;

  constructor(database: Database, table: string, columns: readonly string[], onConflict = '') {
    const row = `(${columns.map(() => '?').join(', ')})`;
    const insert = (rows: number): Statement => database.prepare(`INSERT INTO ${table} (${columns.join(', ')}) VALUES ${Array.from({ length: rows }, () => row).join(', ')} ${onConflict}`);
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

  /** The transaction that they belonged to is undone. */
  drop(): void {
    this.#waiting = [];
  }
}
