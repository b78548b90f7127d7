import type { Athlete } from '../../core/facts/coach.ts';
import type { SessionsFound } from '../../core/facts/session-search.ts';
import type { AthleteDays, Refusal, SessionListing } from '../../core/facts/wire.ts';
import type { SessionGrowth } from '../../core/session/growth.ts';
import type { SessionSlice } from '../../core/session/recorded.ts';
import type { SessionRecord } from '../../core/session/session-record.ts';
import { heardRefusal } from './nobody-here.ts';

/** What the server holds of one recorded session. */
export interface RecordedSession extends SessionSlice {
  readonly session: string;
  readonly mound: string;
  readonly log: string;
}

/** A refusal of the server, or its silence. */
export type Unheard = { readonly kind: 'refused'; readonly code: string; readonly sentence: string } | { readonly kind: 'silent' };
/** An answer of the server, or why there is none. */
export type Answer<T> = { readonly kind: 'answer'; readonly value: T } | Unheard;

/** An answer came, and nothing can be made of it. */
export const UNREADABLE: Unheard = { kind: 'refused', code: 'unreadable-recording', sentence: 'This cannot be shown: what the server gave does not fit together. Try again; if it stays so, tell whoever looks after the server the address of this page.' };

/** An answer that cannot be read is said to be so, as one that never came is. */
export async function readable<T>(asking: Promise<Answer<T>>): Promise<Answer<T>> {
  try {
    return await asking;
  } catch (error) {
    reportError(error);
    return UNREADABLE;
  }
}

/** The recorded sessions of all mounds, newest first. */
export function askForSessions(): Promise<Answer<readonly SessionListing[]>> {
  return ask('/api/sessions');
}

/** A page of the sessions that match everything that is asked. */
export function askForFound(question: string): Promise<Answer<SessionsFound>> {
  return ask(`/api/sessions/found${question}`);
}

/** One session: the state before its first fact, and its facts. */
export function askForSession(session: string): Promise<Answer<RecordedSession>> {
  return ask(`/api/sessions/${encodeURIComponent(session)}`);
}

/** What one session has gained behind a place of its log. */
export function askForGrowth(session: string, place: number): Promise<Answer<SessionGrowth & { readonly log: string }>> {
  return ask(`/api/sessions/${encodeURIComponent(session)}/since/${place}`);
}

/** Everybody who has had a session, by name. */
export function askForAthletes(): Promise<Answer<readonly Athlete[]>> {
  return ask('/api/athletes');
}

/** All sessions of one athlete as they stand, over all mounds, newest first. */
export function askForAthleteRecords(athlete: string): Promise<Answer<readonly SessionRecord[]>> {
  return ask(`/api/athletes/${encodeURIComponent(athlete)}/records`);
}

/** One session as it stands. */
export function askForSessionRecord(session: string): Promise<Answer<SessionRecord>> {
  return ask(`/api/sessions/${encodeURIComponent(session)}/record`);
}

/** Every tracked throw of one athlete by day, over all mounds, and what stands unanswered about the arm. */
export function askForAthleteDays(athlete: string): Promise<Answer<AthleteDays>> {
  return ask(`/api/athletes/${encodeURIComponent(athlete)}/days`);
}

/** What was answered; null where there was a refusal or nothing, for who can do without. */
export async function answered<T>(asking: Promise<Answer<T>>): Promise<T | null> {
  const answer = await asking;
  return answer.kind === 'answer' ? answer.value : null;
}

async function ask<T>(address: string): Promise<Answer<T>> {
  try {
    const response = await fetch(address, { headers: { accept: 'application/json' } });
    const body: unknown = await response.json();
    if (response.ok) return { kind: 'answer', value: body as T };
    const { code, sentence } = body as Refusal;
    heardRefusal({ code });
    return { kind: 'refused', code, sentence };
  } catch {
    return { kind: 'silent' };
  }
}
