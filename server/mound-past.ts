import type { Fact } from '../core/facts/fact.ts';
import { emptyLedger, sessionIn, thrownBy, withSession, type Ledger } from '../core/session/ledger.ts';
import { sliceFrom, touchedBy, type SessionSlice } from '../core/session/recorded.ts';
import { standing } from '../core/session/standing.ts';

/** Facts between two kept states, where nothing asks for one sooner: cutting a recording out folds little more than this many again. */
const EVERY = 1024;

/** What it takes to cut a recording out of a mound's log without folding all of it, as plain data. */
export interface PastKept {
  /** States before the opening of some session, oldest first, each without what the facts behind it do not speak of. */
  readonly bases: Ledger[];
  /** The newest fact that has to do with each session. */
  readonly last: Map<string, number>;
  /** Between which sessions throws were moved, by the place of the fact. */
  readonly moved: Map<number, readonly string[]>;
  /** Whether a fact spoke of a session that the newest base is without. */
  stale: boolean;
}

export interface PastReading {
  /** Facts of the mound behind one place, through another. */
  read(afterPlace: number, throughPlace: number): Iterable<Fact>;
  fold(ledger: Ledger, fact: Fact): Ledger;
}

/** The log of one mound so far, as far as recordings need it. */
export class MoundPast {
  readonly #reading: PastReading;
  readonly #kept: PastKept;

  constructor(mound: string, reading: PastReading, kept?: PastKept) {
    this.#reading = reading;
    this.#kept = kept ?? { bases: [emptyLedger(mound)], last: new Map(), moved: new Map(), stale: false };
  }

  get kept(): PastKept {
    return this.#kept;
  }

  /** The next fact, and the mound's states around it; before a session opens, everything closed must be put away. */
  take(fact: Fact, before: Ledger, after: Ledger): void {
    const { bases, last, moved } = this.#kept;
    const opens = fact.said.kind === 'session-opened' || fact.said.kind === 'session-imported';
    if (opens && (this.#kept.stale || before.place - bases.at(-1)!.place >= EVERY)) {
      bases.push(standing(before));
      this.#kept.stale = false;
    }
    const touched = touchedBy(fact, before, after);
    for (const session of touched) last.set(session, fact.place);
    if (fact.said.kind === 'throws-moved') moved.set(fact.place, touched);
    const newest = bases.at(-1)!;
    const isGone = (id: string): boolean => sessionIn(newest, id) === undefined && (sessionIn(before, id)?.openedPlace ?? Infinity) <= newest.place;
    if ([...touched, ...comparedIn(fact)].some(isGone)) this.#kept.stale = true;
  }

  /** The recording of a session that a ledger of now knows. */
  slice(session: string, now: Ledger): SessionSlice {
    const { openedPlace } = sessionIn(now, session)!;
    const facts = [...this.#reading.read(openedPlace - 1, this.#kept.last.get(session)!)];
    const atOpening = this.#at(openedPlace - 1);
    const lacking = this.#movedAmong(facts).filter((id) => sessionIn(atOpening, id) === undefined && (sessionIn(now, id)?.openedPlace ?? Infinity) < openedPlace);
    return sliceFrom(lacking.length === 0 ? atOpening : this.#withOlder(atOpening, lacking, now), facts);
  }

  #at(place: number): Ledger {
    const base = this.#kept.bases.findLast((one) => one.place <= place)!;
    return this.#foldFrom(base, place, (ledger) => ledger);
  }

  #foldFrom(base: Ledger, through: number, each: (ledger: Ledger, fact: Fact) => Ledger): Ledger {
    let ledger = base;
    for (const fact of this.#reading.read(base.place, through)) ledger = each(this.#reading.fold(ledger, fact), fact);
    return ledger;
  }

  #movedAmong(facts: readonly Fact[]): string[] {
    return [...new Set(facts.flatMap(({ place }) => this.#kept.moved.get(place) ?? []))];
  }

  /**
   * With sessions that were closed long before, as they were then: throws will be moved out of them or into them. They are folded
   * together with all sessions that theirs were ever moved between, and without all others.
   */
  #withOlder(atOpening: Ledger, sessions: readonly string[], now: Ledger): Ledger {
    const related = this.#related(sessions);
    const places = [...related].flatMap((id) => sessionIn(now, id)?.openedPlace ?? []);
    const base = this.#kept.bases.findLast(({ place }) => place < Math.min(...places))!;
    const older = this.#foldFrom(base, atOpening.place, (ledger, { said }) => (said.kind === 'session-closed' && !related.has(said.session) ? withoutThrows(ledger, said.session) : ledger));
    const known = sessions.map((id) => sessionIn(older, id)!).reduce((all, session) => ({ ...all, ...withSession(all, session) }), atOpening);
    const openedPlace = (id: string): number => sessionIn(known, id)!.openedPlace;
    return {
      ...known,
      order: [...atOpening.order, ...sessions].sort((a, b) => openedPlace(a) - openedPlace(b)),
      throws: { ...atOpening.throws, ...Object.fromEntries(sessions.map((id) => [id, thrownBy(older, id)])) },
    };
  }

  #related(sessions: readonly string[]): Set<string> {
    const related = new Set(sessions);
    for (let before = -1; before !== related.size;) {
      before = related.size;
      for (const together of this.#kept.moved.values()) if (together.some((id) => related.has(id))) for (const id of together) related.add(id);
    }
    return related;
  }
}

/** A comparison looks at the throws of a session that it does not name as its own. */
function comparedIn({ said }: Fact): string[] {
  return said.kind === 'comparison-continued' ? [said.day.session] : [];
}

function withoutThrows(ledger: Ledger, session: string): Ledger {
  const { [session]: _, ...throws } = ledger.throws;
  return { ...ledger, throws };
}
