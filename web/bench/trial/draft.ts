import { FAMILY_INTENT } from '../../../core/coaching/starting-grip.ts';
import type { CoachSays, Cue, Grip } from '../../../core/facts/coach.ts';
import { FAMILIES, type Family, type Intent } from '../../../core/facts/vocabulary.ts';
import type { SessionView, TrialView } from '../../../core/facts/views.ts';

/** The next trial as it is being said. It carries over from the last one, so that only a change costs a tap. */
export interface TrialDraft {
  readonly intent: Intent;
  readonly grip: Grip | null;
  readonly cueWords: string;
  readonly focus: Cue['focus'];
  /** Null where nobody said. */
  readonly family: Family | null;
}

/** The draft that repeats a trial. */
export function draftOf({ intent, grip, cue, family }: Pick<TrialView, 'intent' | 'grip' | 'cue' | 'family'>): TrialDraft {
  return { intent, grip, cueWords: cue?.words ?? '', focus: cue?.focus ?? null, family: family ?? null };
}

/** What the next trial starts from: the current trial, else the last one, else a changeup with nothing said. */
export function draftToStart({ trial, trials, intent, athlete }: SessionView): TrialDraft {
  const last = trial ?? trials.at(-1);
  if (last !== undefined) return draftOf(last);
  return { intent: intent === null || intent === athlete.mainFastball ? 'changeup' : intent, grip: null, cueWords: '', focus: null, family: null };
}

export function cueOf({ cueWords, focus }: TrialDraft): Cue | null {
  const words = cueWords.trim();
  return words === '' ? null : { words, focus };
}

/** The families that trials of an intent may be meant as; none where no family is thrown so. */
export function familiesOf(intent: Intent): readonly Family[] {
  return FAMILIES.filter((family) => FAMILY_INTENT[family] === intent);
}

/** What a draft says of the family when its trial begins: nothing where nobody chose one, or where the intent has no such family. */
export function familySaid({ intent, family }: TrialDraft): { readonly family?: Family } {
  return family !== null && familiesOf(intent).includes(family) ? { family } : {};
}

/** What begins the trial of a draft. */
export function begun(session: string, draft: TrialDraft): CoachSays {
  return { kind: 'trial-begun', session, intent: draft.intent, grip: draft.grip, cue: cueOf(draft), ...familySaid(draft) };
}
