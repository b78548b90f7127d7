import type { Database, Statement } from 'libsql';
import { FACT_VERSION, type Fact } from '../../core/facts/fact.ts';
import { Fresh } from './fresh.ts';
import { checksumOf, FACT_COLUMNS, storedFact, type FactRow } from './stored-fact.ts';
import type { Into } from './tables.ts';

/** The facts of all mounds, each at the next place of its own. */
export class FactRows {
  readonly #places = new Map<string, number>();
  readonly #fresh = new Fresh<Fact>();
  readonly #rows: Into;
  readonly #selectLast: Statement;
  readonly #selectOne: Statement;

  constructor(database: Database, rows: Into) {
    this.#rows = rows;
    this.#selectLast = database.prepare('SELECT coalesce(max(place), 0) AS place FROM facts WHERE mound = ?');
    this.#selectOne = database.prepare(`SELECT ${FACT_COLUMNS} FROM facts WHERE mound = ? AND place = ?`);
  }

  add(mound: string, by: string, said: Fact['said'], atMs: number): Fact {
    const place = this.#lastOf(mound) + 1;
    const row = { mound, place, at_ms: atMs, said_by: by, version: FACT_VERSION, said: JSON.stringify(said) };
    this.#rows.add(mound, place, atMs, by, FACT_VERSION, row.said, checksumOf(row));
    this.#places.set(mound, place);
    const fact = { mound, place, atMs, by, version: FACT_VERSION, said };
    this.#fresh.add(fact);
    return fact;
  }

  /** Null for one that is damaged. */
  at(mound: string, place: number): Fact | null {
    return this.#fresh.find((fact) => fact.place === place && fact.mound === mound) ?? storedFact(this.#selectOne.get(mound, place) as FactRow);
  }

  /** What was added is a group that comes into the file as a whole. */
  complete(): void {
    this.#fresh.complete();
  }

  /** The oldest group is in the file. */
  stand(): void {
    this.#fresh.stand();
  }

  /** What is not in the file yet never will be. */
  forget(): void {
    this.#fresh.forget();
    this.#places.clear();
  }

  #lastOf(mound: string): number {
    return this.#places.get(mound) ?? (this.#selectLast.get(mound) as { place: number }).place;
  }
}
