import type { CoachSays } from '../../core/facts/coach.ts';
import type { Who } from './who.ts';

/** What somebody wants to do at a door. */
export type Deed =
  /** Load a screen, by its path. */
  | { readonly kind: 'open'; readonly path: string }
  /** Ask for whatever /api holds: lists, records, recordings, and who else may come in. */
  | { readonly kind: 'ask' }
  /** Follow a mound; with null whoever has it. */
  | { readonly kind: 'watch'; readonly mound: string; readonly session: string | null }
  | { readonly kind: 'say'; readonly mound: string; readonly says: CoachSays };

/** Why not, in the form that every refusal has. */
export interface NotTheirs {
  readonly code: 'not-let-in' | 'not-theirs-to-see' | 'not-theirs-to-say';
  readonly path: string;
  readonly sentence: string;
}

/** Who may do what, for every door: null when they may. What stands in no row is nobody's. */
export function notTheirs(who: Who, deed: Deed): NotTheirs | null {
  switch (who.kind) {
    case 'coach': return deed.kind === 'say' ? saidFrom('bench', deed.says) : null;
    case 'athlete': return deed.kind === 'say' ? notAthletes(deed.says) : null;
    case 'viewer': return mayViewer(who.mound, deed) ? null : deed.kind === 'say' ? READS_ONLY : NOT_SHOWN;
    case 'glance': return ofGlance(who, deed);
    case 'nobody': return NOT_LET_IN;
  }
}

export const NOT_LET_IN: NotTheirs = { code: 'not-let-in', path: '', sentence: 'Nobody is signed in here; load this page anew to sign in, or ask the coach for a new code.' };
export const NOT_SHOWN: NotTheirs = { code: 'not-theirs-to-see', path: '', sentence: 'This screen may not see that; a coach who is signed in may.' };
const READS_ONLY: NotTheirs = { code: 'not-theirs-to-say', path: '', sentence: 'This screen only shows; say it on Bench.' };
const COACHS: NotTheirs = { code: 'not-theirs-to-say', path: 'kind', sentence: 'From Glance an athlete says how the arm feels and what the throw was; the coach says the rest on Bench.' };
const OTHER_SESSION: NotTheirs = { code: 'not-theirs-to-say', path: 'session', sentence: 'This Glance belongs to another session; ask the coach for a new code.' };

function mayViewer(mound: string, deed: Deed): boolean {
  if (deed.kind === 'open') return deed.path === `/wall/${mound}`;
  return deed.kind === 'watch' && deed.mound === mound && deed.session === null;
}

function ofGlance({ mound, session }: Extract<Who, { kind: 'glance' }>, deed: Deed): NotTheirs | null {
  switch (deed.kind) {
    case 'open': return deed.path === `/glance/${mound}` ? null : NOT_SHOWN;
    case 'watch': return deed.mound === mound && deed.session === session ? null : NOT_SHOWN;
    case 'say': return notAthletes(deed.says) ?? (deed.mound === mound && 'session' in deed.says && deed.says.session === session ? null : OTHER_SESSION);
    case 'ask': return NOT_SHOWN;
  }
}

/** An athlete speaks of what only an athlete knows: comfort, soreness and pain, and what the throw felt like. The answer to pain is the coach's above all. */
function notAthletes(says: CoachSays): NotTheirs | null {
  switch (says.kind) {
    case 'arm-reported':
    case 'comfort-said': return saidFrom('glance', says);
    case 'throw-guessed': return null;
    default: return COACHS;
  }
}

function saidFrom(from: 'glance' | 'bench', says: CoachSays): NotTheirs | null {
  // Throws are moved from a session, not said from a screen.
  if (!('from' in says) || says.kind === 'throws-moved' || says.from === from) return null;
  return { code: 'not-theirs-to-say', path: 'from', sentence: `What is said here is said from ${from}.` };
}
