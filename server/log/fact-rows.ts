import type { Database, Statement } from 'libsql';
import { FACT_VERSION, type Fact } from '../../core/facts/fact.ts';
import { Rows } from './rows.ts';
import { checksumOf, FACT_COLUMNS, storedFact, type FactRow } from './stored-fact.ts';

/** The facts of all mounds, each at the next place of its own. */
export class FactRows {
  readonly #places = new Map<string, number>();
  readonly #rows: Rows;
  readonly #selectLast: Statement;
  readonly #selectOne: Statement;

  constructor(database: Database) {
    this.#rows = new Rows(database, 'facts', FACT_COLUMNS.split(', '));
    this.#selectLast = database.prepare('SELECT coalesce(max(place), 0) AS place FROM facts WHERE mound = ?');
    this.#selectOne = database.prepare(`SELECT ${FACT_COLUMNS} FROM facts WHERE mound = ? AND place = ?`);
  }

  /** Inside a transaction. */
  add(mound: string, by: string, said: Fact['said'], atMs: number): Fact {
    const place = this.#lastOf(mound) + 1;
    const row = { mound, place, at_ms: atMs, said_by: by, version: FACT_VERSION, said: JSON.stringify(said) };
    this.#rows.add(mound, place, atMs, by, FACT_VERSION, row.said, checksumOf(row));
    this.#places.set(mound, place);
    return { mound, place, atMs, by, version: FACT_VERSION, said };
  }

  /** Null for one that is damaged. */
  at(mound: string, place: number): Fact | null {
    this.#rows.flush();
    return storedFact(this.#selectOne.get(mound, place) as FactRow);
  }

  flush(): void {
    this.#rows.flush();
  }

  /** The transaction that was under way is undone. */
  forget(): void {
    this.#rows.drop();
    this.#places.clear();
  }

  #lastOf(mound: string): number {
    return this.#places.get(mound) ?? (this.#selectLast.get(mound) as { place: number }).place;
  }
}
