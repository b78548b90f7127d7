import type { Database } from 'libsql';
import { FACT_VERSION, type Fact, type Said } from '../../core/facts/fact.ts';
import { aboutAthlete, erasing, withoutFrom, type AboutAthlete } from '../../core/session/about-athlete.ts';
import { whileFactsChange } from './facts-changing.ts';
import { clearFrames } from './clear-frames.ts';
import { checksumOf, FACT_COLUMNS, storedFact, type FactRow } from './stored-fact.ts';

/** What was put out of the log. */
export interface ErasedFacts {
  readonly facts: number;
  readonly throws: number;
  readonly sessions: number;
  readonly mounds: readonly string[];
  /** Refused frames of devices that may have been the athlete's throws: when and why they were refused stays. */
  readonly frames: number;
  /** Where others' facts have one of the athlete's names in what somebody wrote: only a person can tell whom it means. */
  readonly named: readonly { readonly mound: string; readonly place: number }[];
}

/**
 * Puts out all that a log holds about an athlete, inside the caller's transaction: each fact keeps its place, its time and its
 * mound. The numbers of devices stay settled, so that a throw that is sent again is not stored again. Null for an athlete whom
 * the log does not know.
 * @param by who erases
 */
export function eraseFacts(database: Database, athlete: string, by: string, atMs: number): ErasedFacts | null {
  const quoted = JSON.stringify(athlete);
  const mounds = (database.prepare('SELECT DISTINCT mound FROM facts WHERE instr(said, ?) > 0 ORDER BY mound').all(quoted) as { mound: string }[]).map(({ mound }) => mound);
  const found = mounds.map((mound) => ({ mound, ...readMound(database, mound, athlete) })).filter(({ about }) => about.facts.length > 0);
  if (found.length === 0) return null;
  const names = [...new Set(found.flatMap(({ about }) => about.names))];
  const frames = clearFrames(database, found.flatMap(({ about }) => about.facts));
  const put = database.prepare('UPDATE facts SET said_by = ?, version = ?, said = ?, checksum = ? WHERE mound = ? AND place = ?');
  const write = ({ mound, place, atMs: at }: Pick<Fact, 'mound' | 'place' | 'atMs'>, writer: string, said: Said): void => {
    const row = { mound, place, at_ms: at, said_by: writer, version: FACT_VERSION, said: JSON.stringify(said) };
    put.run(writer, FACT_VERSION, row.said, checksumOf(row), mound, place);
  };
  whileFactsChange(database, () => {
    for (const { about, damaged } of found) {
      for (const fact of about.facts) write(fact, by, erasing(fact, atMs));
      for (const fact of about.movedOut) write(fact, fact.by, withoutFrom(fact.said));
      for (const row of damaged.filter(({ said }) => tells(said, [athlete, ...about.sessions, ...names]))) write({ ...row, atMs: row.at_ms }, by, LOST(atMs));
    }
  });
  return {
    frames, mounds: found.map(({ mound }) => mound),
    facts: count(found, ({ facts }) => facts.length),
    throws: count(found, ({ throws }) => throws),
    sessions: count(found, ({ sessions }) => sessions.length),
    named: namedIn(database, names),
  };
}

const LOST = (erasedAtMs: number): Said => ({ kind: 'erased', erasedAtMs, tookMound: false, seenBy: null });

function readMound(database: Database, mound: string, athlete: string): { readonly about: AboutAthlete; readonly damaged: readonly FactRow[] } {
  const rows = database.prepare(`SELECT ${FACT_COLUMNS} FROM facts WHERE mound = ? ORDER BY place`).all(mound) as FactRow[];
  const facts = rows.map(storedFact);
  return { about: aboutAthlete(facts.filter((fact) => fact !== null), athlete), damaged: rows.filter((_, index) => facts[index] === null) };
}

/** Of a damaged fact nothing is known but its text. */
function tells(text: string, words: readonly string[]): boolean {
  return words.some((word) => text.includes(JSON.stringify(word)));
}

function namedIn(database: Database, names: readonly string[]): ErasedFacts['named'] {
  const written = ['text', 'words', 'reason', 'cue.words', 'file.name'].map((field) => `coalesce(json_extract(said, '$.${field}'), '')`).join(" || ' ' || ");
  const select = database.prepare(`SELECT mound, place FROM facts WHERE said_by NOT LIKE 'device:%' AND json_valid(said) AND instr(lower(${written}), lower(?)) > 0 ORDER BY mound, place`);
  return names.flatMap((name) => select.all(name) as ErasedFacts['named']);
}

function count(found: readonly { readonly about: AboutAthlete }[], of: (about: AboutAthlete) => number): number {
  return found.reduce((sum, { about }) => sum + of(about), 0);
}
