import { NO_BODIES, withBody, type BodyTallies } from '../coaching/honest-arm.ts';
import type { TrialEntry } from './trial-entry.ts';
import { bodyReadings } from './body-readings.ts';
import type { JudgedThrow } from './judged.ts';
import type { SessionEntry, Tags, ThrowEntry } from './ledger.ts';
import { NO_SEAMS, withSeams, type SeamSums } from './seam-sums.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { NO_WINDOW, WINDOW_LOOKS_AT, withWindowThrow, type WindowSums, type WindowThrow } from './windows.ts';
import { workOf } from './work.ts';

/** What the throws that count of one trial in one stage add up to: fastballs and excluded ones do not. */
export interface KeptSums {
  readonly throws: number;
  readonly hits: number;
  readonly judged: number;
  /** The first of them; null without one. */
  readonly first: { readonly place: number; readonly atMs: number } | null;
  /** Those that came while there was feedback. */
  readonly loud: number;
}
const NOTHING_KEPT: KeptSums = { throws: 0, hits: 0, judged: 0, first: null, loud: 0 };

/** What the throws of one trial in one stage add up to, or, before any trial, those of one intent; fastballs left out. */
export interface WorkSums {
  /** Excluded ones too. */
  readonly count: number;
  readonly kept: KeptSums;
  readonly window: WindowSums;
  /** The newest that windows look at, oldest first. */
  readonly newest: readonly WindowThrow[];
  readonly bodies: BodyTallies;
  readonly seams: SeamSums;
}
export const NO_WORK: WorkSums = { count: 0, kept: NOTHING_KEPT, window: NO_WINDOW, newest: [], bodies: NO_BODIES, seams: NO_SEAMS };

/** Under which a trial's throws in a stage are added up; before any trial, those of an intent. */
export function workKey(stage: Stage, { trial, intent }: Pick<Tags, 'trial' | 'intent'>): string {
  return trial === null ? `${stage} ${intent ?? ''}` : `${stage}/${trial}`;
}

/** One throw more. */
export function withWorked(sums: WorkSums, entry: ThrowEntry, { excluded }: Tags, thrown: JudgedThrow, quiet: boolean): WorkSums {
  const count = sums.count + 1;
  if (excluded !== null) return { ...sums, count };
  const { analysed, separation, miss } = thrown;
  const seen: WindowThrow | null = separation === null ? null : { separation, miss };
  return {
    count,
    kept: withKept(sums.kept, entry, thrown, quiet),
    window: seen === null ? sums.window : withWindowThrow(sums.window, seen),
    newest: seen === null ? sums.newest : [...sums.newest.slice(1 - WINDOW_LOOKS_AT), seen],
    bodies: analysed.problem === null ? withBody(sums.bodies, bodyReadings(entry, analysed)) : sums.bodies,
    seams: withSeams(sums.seams, entry, analysed.unexplained),
  };
}

function withKept({ throws, hits, judged, first, loud }: KeptSums, { place, atMs }: ThrowEntry, { miss }: JudgedThrow, quiet: boolean): KeptSums {
  return {
    throws: throws + 1,
    hits: hits + (miss?.onTarget === true ? 1 : 0),
    judged: judged + (miss === null ? 0 : 1),
    first: first ?? { place, atMs },
    loud: loud + (quiet ? 0 : 1),
  };
}

/** What counts of a piece of work in one stage, whichever letters it had in the session. */
export function keptOfWork(works: Readonly<Record<string, WorkSums>>, stage: Stage, work: string, trials: readonly TrialEntry[]): KeptSums {
  return trials.reduce((sum, trial) => {
    const more = workOf(trial) === work ? works[workKey(stage, { trial: trial.letter, intent: null })]?.kept : undefined;
    return more === undefined ? sum : together(sum, more);
  }, NOTHING_KEPT);
}

function together(one: KeptSums, other: KeptSums): KeptSums {
  const first = one.first === null || other.first === null ? (one.first ?? other.first) : one.first.place < other.first.place ? one.first : other.first;
  return { throws: one.throws + other.throws, hits: one.hits + other.hits, judged: one.judged + other.judged, first, loud: one.loud + other.loud };
}

/** The throws of the trial that is being worked on; before any trial, those of the intent that was said. */
export function presentWork(works: Readonly<Record<string, WorkSums>>, { stage, trial, intent }: SessionEntry): WorkSums {
  return (trial === null && intent === null ? undefined : works[workKey(stage, { trial, intent })]) ?? NO_WORK;
}
