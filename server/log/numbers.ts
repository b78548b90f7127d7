import type { Database, Statement } from 'libsql';
import type { Identity, Settled } from './fact-log.ts';
import { Fresh } from './fresh.ts';
import type { Into } from './tables.ts';

type SettledNumber =
  | { readonly kind: 'throw-measured' | 'throw-corrected'; readonly mound: string; readonly place: number }
  | { readonly kind: 'refused' };

/** Numbers of one run that came to the same kind of end one after the other: the first at `place`, the next behind it. */
interface Stretch {
  readonly first: number;
  last: number;
  readonly kind: SettledNumber['kind'];
  /** Null, like the place, for refused ones. */
  readonly mound: string | null;
  readonly place: number | null;
}

interface Run {
  readonly device: string;
  readonly run: string;
  highest: number;
  /** Written last, and perhaps not yet in the file as long as it is. */
  growing: Stretch | null;
}

/**
 * What became of the numbers of devices, in stretches. Nearly every number is higher than any before it in its run, so
 * the highest of each run is kept in memory and the file is asked only about the others.
 */
export class Numbers {
  readonly #runs = new Map<string, Run>();
  readonly #grown = new Set<Run>();
  /** Those that grow no more. */
  readonly #fresh = new Fresh<{ readonly run: Run; readonly stretch: Stretch }>();
  readonly #rows: Into;
  readonly #select: Statement;
  readonly #selectHighest: Statement;
  readonly #selectGaps: Statement;

  constructor(database: Database, rows: Into) {
    this.#rows = rows;
    this.#select = database.prepare('SELECT first, last, kind, mound, place FROM numbers WHERE device = ? AND run = ? AND first <= ? ORDER BY first DESC LIMIT 1');
    this.#selectHighest = database.prepare('SELECT coalesce(max(last), 0) AS highest FROM numbers WHERE device = ? AND run = ?');
    this.#selectGaps = database.prepare(`
      SELECT before + 1 AS first, first - 1 AS last
      FROM (SELECT first, lag(last, 1, 0) OVER (ORDER BY first) AS before FROM numbers WHERE device = ? AND run = ?)
      WHERE first > before + 1 ORDER BY first`);
  }

  /** Null for a number that never came to an end. */
  find({ device, run, sequence }: Identity): SettledNumber | null {
    const known = this.#runOf(device, run);
    if (sequence > known.highest) return null;
    const has = (one: Stretch): boolean => one.first <= sequence && sequence <= one.last;
    const growing = known.growing !== null && has(known.growing) ? known.growing : null;
    const stretch = growing ?? this.#fresh.find((one) => one.run === known && has(one.stretch))?.stretch ?? (this.#select.get(device, run, sequence) as Stretch | undefined);
    if (stretch === undefined || !has(stretch)) return null;
    const { kind, mound, place, first } = stretch;
    return kind === 'refused' ? { kind } : { kind, mound: mound!, place: place! + sequence - first };
  }

  /** Inside a transaction, for a number that is not settled; `mound` and `place` are null for a refused one. */
  settle({ device, run: name, sequence }: Identity, kind: SettledNumber['kind'], mound: string | null, place: number | null): void {
    const run = this.#runOf(device, name);
    if (!grows(run.growing, sequence, kind, mound, place)) {
      this.#write(run);
      if (run.growing !== null) this.#fresh.add({ run, stretch: run.growing });
      run.growing = { first: sequence, last: sequence, kind, mound, place };
    }
    run.growing!.last = sequence;
    run.highest = Math.max(run.highest, sequence);
    this.#grown.add(run);
  }

  /** How far a run is settled, and what is missing in between. */
  settled(device: string, run: string): Settled {
    const gaps = (this.#selectGaps.all(device, run) as { first: number; last: number }[]).map(({ first, last }) => [first, last] as const);
    return { through: gaps[0] === undefined ? this.#runOf(device, run).highest : gaps[0][0] - 1, gaps };
  }

  /** Makes rows of what has grown: a group that comes into the file as a whole. */
  complete(): void {
    for (const run of this.#grown) this.#write(run);
    this.#fresh.complete();
  }

  /** The oldest group is in the file. */
  stand(): void {
    this.#fresh.stand();
  }

  /** What is not in the file yet never will be. */
  forget(): void {
    this.#grown.clear();
    this.#fresh.forget();
    this.#runs.clear();
  }

  #write(run: Run): void {
    if (!this.#grown.delete(run)) return;
    const { first, last, kind, mound, place } = run.growing!;
    this.#rows.add(run.device, run.run, first, last, kind, mound, place);
  }

  #runOf(device: string, run: string): Run {
    const key = `${device}\n${run}`;
    const known = this.#runs.get(key);
    if (known !== undefined) return known;
    const { highest } = this.#selectHighest.get(device, run) as { highest: number };
    const found: Run = { device, run, highest, growing: null };
    this.#runs.set(key, found);
    return found;
  }
}

function grows(stretch: Stretch | null, sequence: number, kind: Stretch['kind'], mound: string | null, place: number | null): boolean {
  if (stretch === null || sequence !== stretch.last + 1 || kind !== stretch.kind || mound !== stretch.mound) return false;
  return stretch.place === null || place === stretch.place + sequence - stretch.first;
}
