import type { Cue, Grip } from '../../../core/facts/coach.ts';
import type { Intent } from '../../../core/facts/vocabulary.ts';
import type { SessionView, TrialView } from '../../../core/facts/views.ts';

/** The next trial as it is being said. It carries over from the last one, so that only a change costs a tap. */
export interface TrialDraft {
  readonly intent: Intent;
  readonly grip: Grip | null;
  readonly cueWords: string;
  readonly focus: Cue['focus'];
}

/** The draft that repeats a trial. */
export function draftOf({ intent, grip, cue }: Pick<TrialView, 'intent' | 'grip' | 'cue'>): TrialDraft {
  return { intent, grip, cueWords: cue?.words ?? '', focus: cue?.focus ?? null };
}

/** What the next trial starts from: the current trial, else the last one, else a changeup with nothing said. */
export function draftToStart({ trial, trials, intent, athlete }: SessionView): TrialDraft {
  const last = trial ?? trials.at(-1);
  if (last !== undefined) return draftOf(last);
  return { intent: intent === null || intent === athlete.mainFastball ? 'changeup' : intent, grip: null, cueWords: '', focus: null };
}

export function cueOf({ cueWords, focus }: TrialDraft): Cue | null {
  const words = cueWords.trim();
  return words === '' ? null : { words, focus };
}

/** The letter that the next trial of a session will get: A … Z, AA … */
export function nextLetter(trials: readonly TrialView[]): string {
  const letter = (index: number): string => (index < 26 ? '' : letter(Math.floor(index / 26) - 1)) + String.fromCharCode(65 + (index % 26));
  return letter(trials.length);
}
