import { CRITERIA, type Criterion, type SessionFound, type SessionQuestion, type SessionsFound } from '../facts/session-search.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { SessionListing } from '../facts/wire.ts';
import { countedIn } from './counted.ts';
import { sessionIn, thrownBy, type Ledger } from './ledger.ts';
import { listSessions } from './recorded.ts';
import type { TrialEntry } from './trial-entry.ts';

/** All of a session that can be looked for. */
export interface FindableSession {
  readonly listing: SessionListing;
  /** Of its opening, in its own time zone. */
  readonly day: IsoDay;
  readonly trials: readonly { readonly letter: string; readonly words: string }[];
  readonly notes: readonly { readonly text: string; readonly place: number | null }[];
  readonly bookmarks: number;
}

/** The sessions of a mound as they can be found, newest first. */
export function findableSessions(ledger: Ledger): FindableSession[] {
  return listSessions(ledger).map((listing) => {
    const session = sessionIn(ledger, listing.id)!;
    return {
      listing,
      day: session.openedDay,
      trials: session.trials.map((trial) => ({ letter: trial.letter, words: wordsOf(trial) })),
      notes: session.notes.map(({ text, place }) => ({ text, place })),
      bookmarks: (ledger.away[listing.id] ?? countedIn(thrownBy(ledger, listing.id), listing.id)).bookmarks,
    };
  });
}

function wordsOf({ intent, family, grip, cue }: TrialEntry): string {
  return [intent, family, grip?.seams, grip?.spread, grip?.pressure, grip?.depth, cue?.words].filter((word) => word !== undefined).join(' ');
}

/** A page of the sessions that match everything that is asked, in the order given. */
export function searchSessions(all: readonly FindableSession[], question: SessionQuestion): SessionsFound {
  const found = matching(all, question);
  const without = found.length > 0 ? [] : CRITERIA.flatMap((criterion) => (question[criterion] === undefined ? [] : [[criterion, matching(all, { ...question, [criterion]: undefined }).length] as const]));
  return {
    total: found.length,
    sessions: found.slice(question.skip, question.skip + question.take).map((session) => withMatches(session, question)),
    without: Object.fromEntries(without),
  };
}

function matching(all: readonly FindableSession[], question: SessionQuestion): FindableSession[] {
  const asked = CRITERIA.filter((criterion) => question[criterion] !== undefined && question[criterion] !== '');
  return all.filter((session) => asked.every((criterion) => matches(session, criterion, question[criterion]!)));
}

function matches(session: FindableSession, criterion: Criterion, wanted: string): boolean {
  switch (criterion) {
    case 'athlete': return holds(session.listing.athleteName, wanted);
    case 'from': return session.day >= wanted;
    case 'to': return session.day <= wanted;
    case 'stage': return session.listing.stages.includes(wanted);
    case 'trial': return session.trials.some((trial) => trialHolds(trial, wanted));
    case 'note': return session.notes.some(({ text }) => holds(text, wanted));
  }
}

function withMatches({ listing, trials, notes, bookmarks }: FindableSession, { trial, note }: SessionQuestion): SessionFound {
  return {
    ...listing, bookmarks, notes: notes.length,
    trialsFound: trial === undefined || trial === '' ? [] : trials.filter((one) => trialHolds(one, trial)).map(({ letter }) => letter),
    notesFound: note === undefined || note === '' ? [] : notes.filter(({ text }) => holds(text, note)),
  };
}

/** A single letter is a trial's own; anything longer is part of its words. */
function trialHolds({ letter, words }: FindableSession['trials'][number], wanted: string): boolean {
  return plain(wanted).split(/\s+/).every((word) => (word.length === 1 ? plain(letter) === word : plain(letter) === word || plain(words).includes(word)));
}

function holds(text: string, wanted: string): boolean {
  const within = plain(text);
  return plain(wanted).split(/\s+/).every((word) => within.includes(word));
}

/** Without case and accents: "Peña" is found by "pena". */
function plain(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase().trim();
}
