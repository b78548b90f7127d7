import type { TrialEntry } from './trial-entry.ts';

/** The name of a trial that holds over days: what was meant, how it was held, what was said. */
export function workOf({ intent, grip, cue }: Pick<TrialEntry, 'intent' | 'grip' | 'cue'>): string {
  return JSON.stringify([intent, grip === null ? null : Object.entries(grip).sort(), cue?.words ?? null]);
}
