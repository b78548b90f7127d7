import type { Athlete } from '../../../core/facts/coach.ts';
import { DEFAULT_DISTANCE_M, type Effort, type Stage } from '../../../core/facts/vocabulary.ts';

/** What has been typed about somebody; nothing of it is a fact before a session opens. */
export interface AthleteDraft {
  /** Of a known athlete whose details are corrected; null for somebody new. */
  readonly id: string | null;
  readonly name: string;
  readonly hand: Athlete['hand'] | null;
  readonly birthYear: string;
  readonly mainFastball: Athlete['mainFastball'];
  readonly units: Athlete['units'];
  readonly language: Athlete['language'];
}

/** Where a session is thrown. */
export interface StageDraft {
  readonly stage: Stage;
  readonly distanceM: number;
  readonly effort: Effort;
}

export const FIRST_BIRTH_YEAR = 1930;
/** Somebody who throws for a coach is at least four: house rule, only to catch a slip of the finger. */
const YOUNGEST = 4;

export const STAGE_AT_FIRST: StageDraft = { stage: 'mound', distanceM: DEFAULT_DISTANCE_M.mound, effort: 'full' };

export function emptyDraft(units: Athlete['units'], language: Athlete['language']): AthleteDraft {
  return { id: null, name: '', hand: null, birthYear: '', mainFastball: 'four-seam', units, language };
}

/** What is known of an athlete, to be corrected. */
export function draftOf(athlete: Athlete): AthleteDraft {
  return { ...athlete, birthYear: String(athlete.birthYear) };
}

export function lastBirthYear(yearNow: number): number {
  return yearNow - YOUNGEST;
}

/** The athlete that a draft describes, or which of its parts is still missing. */
export function athleteFrom(draft: AthleteDraft, fresh: string, yearNow: number): { readonly athlete: Athlete } | { readonly missing: 'name' | 'hand' | 'birthYear' } {
  const name = draft.name.trim();
  if (name === '') return { missing: 'name' };
  if (draft.hand === null) return { missing: 'hand' };
  const birthYear = Number(draft.birthYear);
  if (!Number.isInteger(birthYear) || birthYear < FIRST_BIRTH_YEAR || birthYear > lastBirthYear(yearNow)) return { missing: 'birthYear' };
  const { hand, mainFastball, units, language } = draft;
  return { athlete: { id: draft.id ?? idOf(name, fresh), name, hand, birthYear, mainFastball, units, language } };
}

/** A name that may stand in an address: what is readable of a person's name, and enough of a fresh id that two namesakes stay apart. */
export function idOf(name: string, fresh: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 40);
  return `${plain === '' ? 'a' : plain}-${fresh.slice(0, 8)}`;
}
