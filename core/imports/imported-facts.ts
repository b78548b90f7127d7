import { runOf } from '../facts/import-run.ts';
import type { ImportedFile, SessionImported, ThrowImported } from '../facts/import-says.ts';
import type { ThrowBody } from '../facts/frames.ts';
import type { Source } from '../facts/source.ts';
import type { Intent } from '../facts/vocabulary.ts';
import { letterOf } from '../session/letter.ts';
import type { ImportChoices } from './layout.ts';
import { momentIn } from './local-moment.ts';

/** A row that was read, can have happened, and is new. */
export interface GoodRow {
  readonly line: number;
  readonly athlete: SessionImported['athlete'];
  /** Null where the file says no time of day. */
  readonly atMs: number | null;
  readonly intent: Intent | null;
  readonly trial: string;
  readonly units: Source['units'];
  readonly body: ThrowBody;
}

/** What a file's rows become: a session, closed from the beginning, and its throws in the order of their own time. */
export interface ImportedFacts {
  readonly session: SessionImported;
  readonly throws: readonly ThrowImported[];
}

const SECOND_MS = 1000;
const NOON_MS = 12 * 3600 * SECOND_MS;

/**
 * The facts of one sitting out of a file.
 * @param rows of one athlete on one day, at least one
 * @param id of the session, new in the whole log
 */
export function importedFacts(id: string, day: string, rows: readonly GoodRow[], file: ImportedFile, choices: ImportChoices): ImportedFacts {
  const { timeZone, stage, distanceM, effort, device, sight, axis } = choices;
  const hasTimes = rows.every(({ atMs }) => atMs !== null);
  const noonMs = momentIn(timeZone, day, NOON_MS);
  const timed = rows.toSorted((a, b) => (hasTimes ? a.atMs! - b.atMs! : 0) || a.line - b.line).map((row, index) => ({ ...row, atMs: hasTimes ? row.atMs! : noonMs + index * SECOND_MS }));
  const trials = trialsOf(timed);
  return {
    session: {
      kind: 'session-imported', session: id, athlete: rows[0]!.athlete, timeZone, stage, distanceM, effort, file,
      openedAtMs: timed[0]!.atMs, closedAtMs: timed.at(-1)!.atMs, times: hasTimes ? 'of-throws' : 'of-days',
      trials: trials.map(({ intent, words }) => ({ intent, cue: words === '' ? null : { words, focus: null } })),
    },
    throws: timed.map(({ line, atMs, units, body, intent, trial }) => {
      const index = trials.findIndex((one) => one.intent === intent && one.words === trial);
      return {
        kind: 'throw-imported', session: id, body, intent, trial: index === -1 ? null : letterOf(index),
        source: { device, run: runOf(file), sequence: line, time: atMs, sight, axis, units },
      };
    }),
  };
}

interface Trial {
  readonly intent: Intent;
  readonly words: string;
}

const WORKED_ON: readonly (Intent | null)[] = ['changeup', 'split'];
const MOST_TRIALS = 100;

/** One for each pitch and whatever the file says of it; a changeup is always in a trial, so that it can be held against another. */
function trialsOf(rows: readonly GoodRow[]): Trial[] {
  const found = new Map<string, Trial>();
  for (const { intent, trial } of rows) {
    if (intent !== null && (trial !== '' || WORKED_ON.includes(intent))) found.set(`${intent} ${trial}`, { intent, words: trial });
  }
  return [...found.values()].slice(0, MOST_TRIALS);
}
