import Database from 'libsql';
import type { GoodRow } from '../../core/imports/imported-facts.ts';
import type { RowRefusal } from '../../core/facts/import-wire.ts';
import { Rows } from './rows.ts';
import { removeWhole } from './whole-file.ts';

/** Rows that are looked at in one go. */
const PIECE = 500;

/** One sitting of one athlete in a file. */
export interface Sitting {
  readonly mound: string;
  readonly athlete: string;
  readonly day: string;
  readonly session: string;
  readonly throws: number;
}

/** A good row, and what it is known by if the same row comes again. */
export interface StagedRow extends GoodRow {
  readonly identity: string;
}

/**
 * The rows of one file between reading and storing, in a file beside the log, so that a file of any length takes no memory. It
 * holds what the log will hold, so it goes as soon as it is done with.
 */
export class StagedRows {
  readonly #database: Database.Database;
  readonly #file: string;
  readonly #good: Rows;
  readonly #refused: Rows;
  #goodRows = 0;
  #refusedRows = 0;

  constructor(file: string) {
    this.#file = file;
    removeWhole(file);
    this.#database = new Database(file);
    // What is lost in a power cut is read from the file again.
    this.#database.pragma('journal_mode = OFF');
    this.#database.pragma('synchronous = OFF');
    this.#database.exec(`
      CREATE TABLE good (line INTEGER PRIMARY KEY, mound TEXT, athlete TEXT, day TEXT, session TEXT, at_ms INTEGER, identity TEXT, row TEXT) STRICT;
      CREATE TABLE names (line INTEGER PRIMARY KEY, name TEXT) STRICT;
      CREATE TABLE refused (entry INTEGER PRIMARY KEY, line INTEGER, code TEXT, problem_column TEXT, sentence TEXT) STRICT;
      CREATE INDEX sittings ON good (day, mound, athlete, session, at_ms, line);
      CREATE INDEX identities ON good (identity, line);
      BEGIN`);
    this.#good = new Rows(this.#database, { name: 'good', columns: ['line', 'mound', 'athlete', 'day', 'session', 'at_ms', 'identity', 'row'] });
    this.#refused = new Rows(this.#database, { name: 'refused', columns: ['line', 'code', 'problem_column', 'sentence'] });
  }

  get counts(): { readonly good: number; readonly refused: number } {
    return { good: this.#goodRows, refused: this.#refusedRows };
  }

  addGood({ mound, day, session }: Pick<Sitting, 'mound' | 'day' | 'session'>, { identity, ...row }: StagedRow): void {
    this.#goodRows += 1;
    this.#good.add(row.line, mound, row.athlete.id, day, session, row.atMs, identity, JSON.stringify(row));
  }

  addRefused({ line, code, column, sentence }: RowRefusal): void {
    this.#refusedRows += 1;
    this.#refused.add(line, code, column, sentence);
  }

  /**
   * Every row has been added. Rows that say the same are told apart by which comes first, because a file without times of day can
   * have three throws of 78 mph; those that the log knows already are refused. Stops after every few hundred rows, for others to work.
   * @param nameFor under which a row can be stored; null for one that is known
   */
  *complete(nameFor: (identity: string) => string | null, known: Omit<RowRefusal, 'line'>): Generator<void> {
    this.#good.flush();
    const next = this.#database.prepare(`SELECT line, identity FROM good WHERE line > ? ORDER BY line LIMIT ${PIECE}`);
    const before = this.#database.prepare('SELECT count(*) AS count FROM good WHERE identity = ? AND line < ?');
    const remove = this.#database.prepare('DELETE FROM good WHERE line = ?');
    const name = this.#database.prepare('INSERT INTO names VALUES (?, ?)');
    let rows: { line: number; identity: string }[];
    let line = 0;
    const removed: number[] = [];
    while ((rows = next.all(line) as typeof rows).length > 0) {
      for (const row of rows) {
        const own = `${row.identity}-${(before.get(row.identity, row.line) as { count: number }).count + 1}`;
        const free = nameFor(own);
        if (free === null) removed.push(row.line);
        else name.run(row.line, free);
      }
      line = rows.at(-1)!.line;
      yield;
    }
    // Only now, because those before a row count for its name.
    for (const one of removed) {
      remove.run(one);
      this.addRefused({ ...known, line: one });
    }
    this.#goodRows -= removed.length;
    this.#refused.flush();
    this.#database.exec('COMMIT');
  }

  /** The earliest day first. */
  sittings(): Sitting[] {
    return this.#database.prepare('SELECT mound, athlete, day, session, count(*) AS throws FROM good GROUP BY day, mound, athlete, session ORDER BY day, mound, athlete, session').all() as Sitting[];
  }

  /** Of one sitting, in the order of their time, so many to a piece. */
  *rows({ mound, athlete, day, session }: Sitting, piece: number): Generator<StagedRow[]> {
    const rows = this.#database.prepare('SELECT row, name FROM good JOIN names USING (line) WHERE day = ? AND mound = ? AND athlete = ? AND session = ? ORDER BY at_ms, line').iterate(day, mound, athlete, session) as Iterable<{ row: string; name: string }>;
    let some: StagedRow[] = [];
    for (const { row, name } of rows) {
      if (some.push({ ...(JSON.parse(row) as GoodRow), identity: name }) < piece) continue;
      yield some;
      some = [];
    }
    if (some.length > 0) yield some;
  }

  /** The first so many, or all. */
  refusals(most = -1): Iterable<RowRefusal> {
    return this.#database.prepare('SELECT line, code, problem_column AS "column", sentence FROM refused ORDER BY line, entry LIMIT ?').iterate(most) as Iterable<RowRefusal>;
  }

  /** How many of each code. */
  refusalsByCode(): Record<string, number> {
    return Object.fromEntries((this.#database.prepare('SELECT code, count(*) AS count FROM refused GROUP BY code ORDER BY code').all() as { code: string; count: number }[]).map(({ code, count }) => [code, count]));
  }

  /** Closes, and removes the file. */
  drop(): void {
    this.#database.close();
    removeWhole(this.#file);
  }
}
