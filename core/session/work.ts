import type { TrialEntry } from './trial-entry.ts';

/** The name of a trial that holds over days: what was meant, how it was held, what was said. */
export function workOf({ intent, grip, cue }: Pick<TrialEntry, 'intent' | 'grip' | 'cue'>): string {
  return JSON.stringify([intent, grip === null ? null : Object.entries(grip).sort(), cue?.words ?? null]);
}

/** The throws of a session's trials that are this work, whichever letter it had when they were thrown. */
export function throwsOfWork<Thrown extends { readonly trial: string | null }>(work: string, trials: readonly TrialEntry[], throws: readonly Thrown[]): Thrown[] {
  const letters = new Set(trials.filter((trial) => workOf(trial) === work).map(({ letter }) => letter));
  return throws.filter(({ trial }) => trial !== null && letters.has(trial));
}
