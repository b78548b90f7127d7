import type { Athlete } from '../../core/facts/coach.ts';
import type { DeviceState, SessionListing } from '../../core/facts/wire.ts';
import type { MoundHead } from '../../core/facts/views.ts';
import { knowsSession, openSessions, sessionsIn, type Ledger } from '../../core/session/ledger.ts';
import { listSessions } from '../../core/session/recorded.ts';
import { findableSessions, type FindableSession } from '../../core/session/session-search.ts';

export interface MoundListing {
  readonly mound: string;
  readonly place: number;
  readonly device: DeviceState;
  readonly openSessions: MoundHead['openSessions'];
}

/** Every mound that has facts or was heard of, by name. */
export function listMounds(ledgers: readonly Ledger[], heard: readonly string[], stateOf: (mound: string) => DeviceState): MoundListing[] {
  const byMound = new Map(ledgers.map((ledger) => [ledger.mound, ledger]));
  return [...new Set([...byMound.keys(), ...heard])].sort().map((mound) => {
    const ledger = byMound.get(mound);
    return { mound, place: ledger?.place ?? 0, device: stateOf(mound), openSessions: ledger === undefined ? [] : openSessions(ledger) };
  });
}

/** Every athlete once, as the newest session says, by name. Who is left without a session, because an import was taken back, can still be given out and erased. */
export function listAthletes(ledgers: readonly Ledger[]): Athlete[] {
  const known = ledgers.flatMap((ledger) => Object.values(ledger.athletes));
  const sessions = ledgers.flatMap(sessionsIn).sort((a, b) => a.openedAtMs - b.openedAtMs);
  const newest = new Map([...known, ...sessions].map(({ athlete }) => [athlete.id, athlete]));
  return [...newest.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

/** The sessions of one athlete over all mounds, newest first; null for somebody nobody has heard of. */
export function listAthleteSessions(ledgers: readonly Ledger[], athlete: string): SessionListing[] | null {
  const visited = ledgers.filter((ledger) => ledger.athletes[athlete] !== undefined);
  return visited.length === 0 ? null : listAllSessions(visited).filter(({ athleteId }) => athleteId === athlete);
}

/** The sessions of all mounds, newest first. */
export function listAllSessions(ledgers: readonly Ledger[]): SessionListing[] {
  return ledgers.flatMap(listSessions).sort((a, b) => b.openedAtMs - a.openedAtMs);
}

/** The sessions of all mounds as they can be found, newest first. */
export function listFindable(ledgers: readonly Ledger[]): FindableSession[] {
  return ledgers.flatMap(findableSessions).sort((a, b) => b.listing.openedAtMs - a.listing.openedAtMs);
}

/** The state of the mound that holds a session. */
export function moundOf(ledgers: readonly Ledger[], session: string): Ledger | undefined {
  return ledgers.find((ledger) => knowsSession(ledger, session));
}
