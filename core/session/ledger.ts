import type { MoundAir } from '../facts/air-says.ts';
import type { Athlete } from '../facts/coach.ts';
import type { Decision } from '../facts/decision-says.ts';
import type { Source } from '../facts/fact.ts';
import type { SessionImported } from '../facts/import-says.ts';
import type { ThrowBody } from '../facts/frames.ts';
import type { IsoDay } from '../facts/care-view.ts';
import type { MoundHead } from '../facts/views.ts';
import type { Effort, Intent, Stage } from '../facts/vocabulary.ts';
import type { AthleteBrought, BaselinesByStage, NumbersByStage } from './brought.ts';
import type { Planned, PlansBrought } from './planned.ts';
import type { TargetsByStage } from './targets.ts';
import type { ArmBrought, Told } from './told.ts';
import type { PlacedCount } from './placed-count.ts';
import { throwAt, withoutThrow, withThrow, type InRuns } from './thrown.ts';
import type { TrialEntry } from './trial-entry.ts';

/** What a session says about one of its throws. Kept per session, so that a throw moved away and back is as it was. */
export interface Tags {
  readonly stage: Stage;
  readonly distanceM: number;
  readonly effort: Effort;
  /** Calendar day of the session's time zone. */
  readonly day: IsoDay;
  readonly intent: Intent | null;
  readonly taggedLater: boolean;
  readonly trial: string | null;
  readonly excluded: string | null;
  /** Only where somebody said so: most throws have none. */
  readonly bookmarked?: boolean;
}

export interface ThrowEntry {
  readonly place: number;
  readonly atMs: number;
  readonly source: Source;
  readonly body: ThrowBody;
  /** What was last said about the mound's air before it. */
  readonly air: MoundAir | null;
  readonly corrected: boolean;
  readonly session: string | null;
  readonly tags: Readonly<Record<string, Tags>>;
}

/** Throws of one session, or of nobody. */
export type Thrown = InRuns<ThrowEntry>;

export interface SessionEntry {
  readonly id: string;
  readonly athlete: Athlete;
  readonly timeZone: string;
  readonly openedPlace: number;
  readonly openedAtMs: number;
  readonly openedDay: IsoDay;
  readonly closedAtMs: number | null;
  readonly stage: Stage;
  readonly distanceM: number;
  readonly effort: Effort;
  readonly intent: Intent | null;
  readonly trial: string | null;
  readonly trials: readonly TrialEntry[];
  readonly decision: Decision;
  readonly targets: TargetsByStage;
  readonly notes: readonly { readonly written: number; readonly atMs: number; readonly text: string; readonly place: number | null }[];
  /** Newest baseline of each stage from the athlete's sessions before this one, as it was known at opening. */
  readonly earlier: BaselinesByStage;
  /** Highest number that a baseline of each stage had before this session; one of another mound can be newer and have a lower one. */
  readonly baselinesGiven: NumbersByStage;
  /** Where a new baseline was asked for, oldest first. */
  readonly renewals: readonly { readonly stage: Stage; readonly place: number }[];
  readonly told: Told;
  readonly planned: Planned;
  /** In a slice: not all of its throws came along, so they form no baseline that anybody brings from it; its athlete has that already. */
  readonly partly?: true;
  /** Where it came out of a file: which one, when that arrived, and who brought it. */
  readonly imported?: Imported;
}

interface Imported extends Pick<SessionImported, 'file' | 'times'> {
  readonly atMs: number;
  readonly by: string;
}

/** A closed session whose throws are put away: all that is asked of them without looking at each, and what to ask the shelf for. */
export interface PutAway {
  readonly pack: number;
  readonly count: number;
  /** In the order in which they came. */
  readonly stages: readonly Stage[];
  readonly bookmarks: number;
  /** The newest of each stage that the session came to itself. */
  readonly baselines: BaselinesByStage;
  readonly days: readonly PlacedCount[];
  /** Places of the first and the last throw. */
  readonly first: number;
  readonly last: number;
  /** Numbers of devices among which those of its throws are. */
  readonly numbers: readonly { readonly device: string; readonly run: string; readonly from: number; readonly to: number }[];
}

/** Where throws are that were put away. */
export interface Shelf {
  /** The throws of a session as they were when they were put away under this number: always the same. */
  bring(session: string, pack: number): Thrown;
}

/** What an athlete brings to the next session. */
export interface AthleteEntry {
  readonly athlete: Athlete;
  readonly targets: TargetsByStage;
  /** From sessions that this ledger no longer holds. */
  readonly baselines: BaselinesByStage;
  readonly arm: ArmBrought;
  readonly plans: PlansBrought;
}

/**
 * Everything that a mound's facts have said so far, as plain data: the state of the fold.
 * Nothing in it is computed from a measurement, except the earlier baselines frozen when a session opened, and what is kept of
 * throws that are put away, which is the same as if they were not.
 */
export interface Ledger {
  readonly mound: string;
  readonly place: number;
  readonly atMs: number;
  readonly generation: number;
  readonly active: string | null;
  /** Ids in the order of the log; imported ones were thrown earlier. */
  readonly order: readonly string[];
  /** Sessions, those that are closed apart: what is said of the few open ones shall not copy a long history. `sessionIn` finds either. */
  readonly open: Readonly<Record<string, SessionEntry>>;
  readonly closed: Readonly<Record<string, SessionEntry>>;
  /** By session; one without throws, or whose throws are put away, is not in it. */
  readonly throws: Readonly<Record<string, Thrown>>;
  /** By session: a long history would not fit into memory. Only a server puts away. */
  readonly away: Readonly<Record<string, PutAway>>;
  /** Null where nothing is put away. */
  readonly shelf: Shelf | null;
  /** Throws that nobody has. */
  readonly unclaimed: Thrown;
  readonly athletes: Readonly<Record<string, AthleteEntry>>;
  readonly source: { readonly device: string; readonly sight: Source['sight']; readonly axis: Source['axis'] } | null;
  readonly air: { readonly atMs: number; readonly air: MoundAir } | null;
  /** What other mounds know of an athlete's arm, by athlete. */
  readonly elsewhere: Readonly<Record<string, ArmBrought>>;
  /** What else other mounds know of an athlete, by athlete. */
  readonly otherMounds: Readonly<Record<string, AthleteBrought>>;
}

export function emptyLedger(mound: string): Ledger {
  return { mound, place: 0, atMs: 0, generation: 0, active: null, order: [], open: {}, closed: {}, throws: {}, away: {}, shelf: null, unclaimed: [], athletes: {}, source: null, air: null, elsewhere: {}, otherMounds: {} };
}

type Sessions = Pick<Ledger, 'open' | 'closed'>;

export function sessionIn({ open, closed }: Sessions, id: string): SessionEntry | undefined {
  return closed[id] ?? open[id];
}

/** For an id that somebody made up. */
export function knowsSession({ open, closed }: Sessions, id: string): boolean {
  return Object.hasOwn(open, id) || Object.hasOwn(closed, id);
}

/** All of them, in the order of the log. */
export function sessionsIn(ledger: Sessions & Pick<Ledger, 'order'>): SessionEntry[] {
  return ledger.order.flatMap((id) => sessionIn(ledger, id) ?? []);
}

/** With a session that is new, or as it is now; one that is closed stays closed. */
export function withSession({ open, closed }: Sessions, session: SessionEntry): Sessions {
  const { id } = session;
  if (session.closedAtMs === null) return { open: { ...open, [id]: session }, closed };
  return { open: open[id] === undefined ? open : withoutKey(open, id), closed: { ...closed, [id]: session } };
}

/** Only these of the sessions that are there, in this order. */
export function onlySessions(ledger: Sessions, order: readonly string[], change: (session: SessionEntry) => SessionEntry = (session) => session): Sessions & Pick<Ledger, 'order'> {
  const [open, closed]: [[string, SessionEntry][], [string, SessionEntry][]] = [[], []];
  for (const id of order) {
    const session = sessionIn(ledger, id);
    if (session !== undefined) (session.closedAtMs === null ? open : closed).push([id, change(session)]);
  }
  return { order, open: Object.fromEntries(open), closed: Object.fromEntries(closed) };
}

/** Places of the throws that nobody has, up to a place. */
export function unclaimedThrough(ledger: Ledger, through: number): number[] {
  return throwsOf(ledger, null).flatMap(({ place }) => (place <= through ? [place] : []));
}

/** Throws of a session, or with null of nobody, in the order of the log. */
export function throwsOf(ledger: Ledger, session: string | null): ThrowEntry[] {
  return thrownBy(ledger, session).flat();
}

type Holding = Pick<Ledger, 'throws' | 'away' | 'shelf' | 'unclaimed'>;

/** The same in the runs that they are kept in. */
export function thrownBy({ throws, away, shelf, unclaimed }: Holding, session: string | null): Thrown {
  if (session === null) return unclaimed;
  const found = throws[session];
  if (found !== undefined) return found;
  const put = away[session];
  return put === undefined ? [] : shelf!.bring(session, put.pack);
}

/** The throw at a place of the log, whoever has it. */
export function throwIn(ledger: Holding, place: number): ThrowEntry | undefined {
  for (const thrown of [...Object.values(ledger.throws), ledger.unclaimed]) {
    const found = throwAt(thrown, place);
    if (found !== undefined) return found;
  }
  return firstAway(ledger, ({ first, last }) => first <= place && place <= last, (thrown) => throwAt(thrown, place));
}

/** Looks through the throws of those who can have what is sought, the session that was put away last first. */
export function firstAway<Found>(ledger: Holding, canHave: (put: PutAway) => boolean, look: (thrown: Thrown) => Found | undefined): Found | undefined {
  for (const [session, put] of Object.entries(ledger.away).toReversed()) {
    const found = canHave(put) ? look(thrownBy(ledger, session)) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

/** With a throw that its session now has, or nobody, and that whoever had it before has no longer. */
export function withEntry(ledger: Ledger, entry: ThrowEntry, before?: ThrowEntry): Ledger {
  const left = before === undefined || before.session === entry.session ? ledger : holding(ledger, before.session, withoutThrow(thrownBy(ledger, before.session), before.place));
  return { ...ledger, ...withThrown(left, entry) };
}

/** With the throw that comes next in the log. Name by name, because every throw goes through here. */
export function withNewest(ledger: Ledger, entry: ThrowEntry, atMs: number): Ledger {
  const { mound, generation, active, order, open, closed, athletes, air, elsewhere, otherMounds } = ledger;
  const { throws, away, shelf, unclaimed } = withThrown(ledger, entry);
  const { device, sight, axis } = entry.source;
  return { mound, place: entry.place, atMs, generation, active, order, open, closed, throws, away, shelf, unclaimed, athletes, source: { device, sight, axis }, air, elsewhere, otherMounds };
}

function withThrown(before: Holding, entry: ThrowEntry): Holding {
  return holding(before, entry.session, withThrow(thrownBy(before, entry.session), entry));
}

/** What of a session has changed is at hand. */
function holding({ throws, away, shelf, unclaimed }: Holding, session: string | null, thrown: Thrown): Holding {
  if (session === null) return { throws, away, shelf, unclaimed: thrown };
  return {
    throws: thrown.length > 0 ? { ...throws, [session]: thrown } : withoutKey(throws, session),
    away: away[session] === undefined ? away : withoutKey(away, session),
    shelf,
    unclaimed,
  };
}

/** Without what stands under one name. */
export function withoutKey<One>(all: Readonly<Record<string, One>>, key: string): Readonly<Record<string, One>> {
  const { [key]: _, ...rest } = all;
  return rest;
}

/** The sessions that are not closed, in the order of opening. */
export function openSessions({ open, active }: Pick<Ledger, 'open' | 'active'>): MoundHead['openSessions'] {
  return Object.values(open).sort((a, b) => a.openedPlace - b.openedPlace).map(({ id, athlete }) => ({ id, athleteName: athlete.name, active: id === active }));
}
