import type { FeedbackMode } from '../facts/feedback-says.ts';
import type { FeedbackNow, FeedbackSource } from '../facts/feedback-view.ts';

/** A changeup as feedback sees it; fastballs and excluded throws do not come here. */
export interface FeedbackThrow {
  readonly place: number;
  /** Null where there is no zone, or movement could not be measured. */
  readonly onTarget: boolean | null;
  /** The athlete has said where it went and how it moved. */
  readonly guessed: boolean;
}

const SOURCES: Readonly<Record<FeedbackMode['kind'], FeedbackSource>> = {
  'every-throw': { source: 'schmidt-1989-winstein-1990', sure: 'old-small-tasks' },
  'outside-band': { source: 'sherwood-1988-cruz-2018', sure: 'plausible' },
  summary: { source: 'schmidt-1989-winstein-1990', sure: 'old-small-tasks' },
  fading: { source: 'schmidt-1989-winstein-1990', sure: 'old-small-tasks' },
  none: { source: 'practice-is-not-learning', sure: 'agreed' },
};

export function feedbackSource(mode: FeedbackMode): FeedbackSource {
  return SOURCES[mode.kind];
}

/** Throws of each step of fading, and of how many throws one is shown: 100, 50, 25 %. The steps' length is a house rule. */
const FADE_AFTER = 10;
const FADE_EVERY = [1, 2, 4] as const;

/** So many of the newest throws are looked at by any mode. */
export const FEEDBACK_LOOKS_AT = 5;

/**
 * What the athlete is shown after these throws, the oldest first, all since the mode was chosen, or the last of `count`. With `askFirst` nothing
 * of a throw that is due is shown before the athlete has said what it was.
 */
export function feedbackNow(mode: FeedbackMode, askFirst: boolean, thrown: readonly FeedbackThrow[], count: number = thrown.length): FeedbackNow {
  const last = thrown.at(-1);
  if (mode.kind === 'none') return { kind: 'no-feedback' };
  if (last === undefined) return { kind: 'nothing-thrown' };
  const due = dueNow(mode, thrown, last, count);
  const shows = due.kind === 'full' || due.kind === 'summary' || due.kind === 'quiet-good';
  return askFirst && shows && !last.guessed ? { kind: 'ask-first', place: last.place } : due;
}

function dueNow(mode: Exclude<FeedbackMode, { kind: 'none' }>, thrown: readonly FeedbackThrow[], last: FeedbackThrow, count: number): FeedbackNow {
  switch (mode.kind) {
    case 'every-throw':
      return { kind: 'full', place: last.place, because: 'every-throw' };
    case 'outside-band':
      if (last.onTarget === true) return { kind: 'quiet-good', place: last.place };
      return { kind: 'full', place: last.place, because: last.onTarget === null ? 'not-judged' : 'outside-band' };
    case 'summary': {
      const past = count % mode.after;
      return past === 0 ? summaryOf(thrown.slice(-mode.after)) : { kind: 'waits', more: mode.after - past };
    }
    case 'fading': {
      const more = throwsUntilShown(count);
      return more === 0 ? { kind: 'full', place: last.place, because: 'its-turn' } : { kind: 'waits', more };
    }
  }
}

function summaryOf(thrown: readonly FeedbackThrow[]): FeedbackNow {
  const judged = thrown.filter(({ onTarget }) => onTarget !== null);
  return { kind: 'summary', places: thrown.map(({ place }) => place), onTarget: judged.filter(({ onTarget }) => onTarget).length, judged: judged.length };
}

/** In fading: 0 when the newest of so many throws is shown, else how many more until one is. */
function throwsUntilShown(count: number): number {
  const step = Math.min(FADE_EVERY.length - 1, Math.floor((count - 1) / FADE_AFTER));
  const inStep = count - step * FADE_AFTER;
  const every = FADE_EVERY[step]!;
  return (every - (inStep % every)) % every;
}
