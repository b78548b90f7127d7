import { FASTBALLS_NEEDED } from '../coaching/baseline.ts';
import type { CoachSays } from '../facts/coach.ts';
import { fastballsIn } from './fastballs.ts';
import { toComparison } from './admit-comparison.ts';
import { sessionIn, throwIn, thrownBy, unclaimedThrough, type Ledger, type SessionEntry } from './ledger.ts';
import { isTimeZone } from './local-day.ts';
import type { Objection } from './objection.ts';
import { zoneIn } from './targets.ts';

/** Whether a well-formed statement makes sense in the present state of its mound; null when it does. */
export function objection(ledger: Ledger, says: CoachSays): Objection | null {
  if (says.kind === 'session-opened') return toOpening(ledger, says);
  if (says.kind === 'throws-moved') return toMoving(ledger, says);
  if (says.kind === 'air-set') return null;
  const session = sessionIn(ledger, says.session);
  if (session === undefined) return unknownSession(says.session);
  return whileClosed(session, says) ?? inSession(ledger, session, says);
}

function toOpening(ledger: Ledger, says: Extract<CoachSays, { kind: 'session-opened' }>): Objection | null {
  if (sessionIn(ledger, says.session) !== undefined) return { code: 'session-known', path: 'session', sentence: `There is already a session ${says.session} on this mound; choose another id.` };
  if (!isTimeZone(says.timeZone)) return { code: 'unknown-time-zone', path: 'timeZone', sentence: `No time zone is called ${says.timeZone}; send a name such as America/Chicago.` };
  return null;
}

function toMoving(ledger: Ledger, says: Extract<CoachSays, { kind: 'throws-moved' }>): Objection | null {
  if (says.session !== null && sessionIn(ledger, says.session) === undefined) return unknownSession(says.session);
  const stranger = says.places.findIndex((place) => throwIn(ledger, place) === undefined);
  if (stranger !== -1) return { code: 'no-throw-there', path: `places.${stranger}`, sentence: `Place ${says.places[stranger]} of this mound's log is not a throw.` };
  const { from } = says;
  const gone = from === undefined ? -1 : says.places.findIndex((place) => throwIn(ledger, place)!.session !== from);
  return gone === -1 ? null : { code: 'moved-since', path: `places.${gone}`, sentence: `Place ${says.places[gone]} has been moved by somebody since; look where it is before you move it.` };
}

/** A closed session can still be corrected, tagged and annotated; it can no longer be thrown in. */
function whileClosed(session: SessionEntry, says: CoachSays): Objection | null {
  if (session.closedAtMs === null) return null;
  switch (says.kind) {
    case 'throws-tagged':
    case 'throws-excluded':
    case 'throws-restored':
    case 'note-written':
    case 'note-withdrawn':
    case 'throw-bookmarked':
    case 'zone-set':
    case 'arm-reported':
    case 'pain-answered':
    case 'throw-guessed':
    case 'gate-passed':
    case 'observation-ticked':
    case 'comparison-opened':
    case 'comparison-continued':
      return null;
    default:
      return { code: 'session-closed', path: 'session', sentence: `The session of ${session.athlete.name} is closed; open a new one to go on.` };
  }
}

function inSession(ledger: Ledger, session: SessionEntry, says: Exclude<CoachSays, { kind: 'session-opened' | 'throws-moved' | 'air-set' }>): Objection | null {
  switch (says.kind) {
    case 'trial-resumed':
    case 'gate-passed':
      return hasTrial(session, says.trial) ? null : noTrial(says.trial);
    case 'throws-tagged':
      if (says.trial !== null && !hasTrial(session, says.trial)) return noTrial(says.trial);
      return notOfSession(ledger, session, says.places);
    case 'throws-excluded':
    case 'throws-restored':
      return notOfSession(ledger, session, says.places);
    case 'throw-guessed':
    case 'throw-bookmarked':
      return notOfSession(ledger, session, [says.place]);
    case 'pain-answered':
      return session.told.pain === null ? { code: 'no-pain-reported', path: 'answer', sentence: `No pain of ${session.athlete.name} stands unanswered.` } : null;
    case 'throws-claimed':
      return unclaimedThrough(ledger, says.through).length > 0 ? null : { code: 'nothing-unclaimed', path: 'through', sentence: `No throw up to place ${says.through} of this mound's log is unclaimed.` };
    case 'comparison-opened':
    case 'comparison-continued':
      return toComparison(ledger, session, says);
    case 'zone-removed':
      return zoneIn(session, session.stage) === null ? { code: 'no-target', path: 'session', sentence: 'The present stage has no target zone to take away.' } : null;
    case 'observation-ticked':
    case 'note-written':
      return says.place === null ? null : notOfSession(ledger, session, [says.place]);
    case 'note-withdrawn':
      return session.notes.some(({ written }) => written === says.note) ? null : { code: 'no-such-note', path: 'note', sentence: 'There is no such note, or it has been withdrawn already.' };
    case 'baseline-renewed': {
      const have = fastballsIn(thrownBy(ledger, session.id), session)[says.stage]?.count ?? 0;
      return have >= FASTBALLS_NEEDED ? null : { code: 'too-few-fastballs', path: 'stage', sentence: `A baseline needs ${FASTBALLS_NEEDED} fastballs of this stage; there are ${have}.` };
    }
    default:
      return null;
  }
}

function notOfSession(ledger: Ledger, session: SessionEntry, places: readonly number[]): Objection | null {
  const stranger = places.findIndex((place) => throwIn(ledger, place)?.session !== session.id);
  return stranger === -1 ? null : { code: 'not-of-this-session', path: `places.${stranger}`, sentence: `Place ${places[stranger]} is not a throw of this session; move it here first.` };
}

function hasTrial(session: SessionEntry, letter: string): boolean {
  return session.trials.some((trial) => trial.letter === letter);
}

function noTrial(letter: string): Objection {
  return { code: 'no-such-trial', path: 'trial', sentence: `This session has no trial ${letter}; begin it first.` };
}

function unknownSession(id: string): Objection {
  return { code: 'unknown-session', path: 'session', sentence: `This mound has no session ${id}.` };
}
