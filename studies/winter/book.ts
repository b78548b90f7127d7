import type { ArmCare } from '../../core/facts/care-view.ts';
import type { Cue, Grip } from '../../core/facts/coach.ts';
import { FACT_VERSION, type Said, type Source } from '../../core/facts/fact.ts';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { DEFAULT_DISTANCE_M, type Family, type Intent } from '../../core/facts/vocabulary.ts';
import { FAMILY_INTENT, STARTING_GRIP } from '../../core/coaching/starting-grip.ts';
import { armCareView } from '../../core/session/coaching-view.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, sessionIn, thrownBy, type Ledger, type SessionEntry } from '../../core/session/ledger.ts';
import { countsOf, daysOf } from '../../core/session/throwing-days.ts';
import type { Arm } from './arm.ts';

/** A family, and the ideas by number that are held on to with it. */
export interface Work {
  readonly family: Family;
  readonly ideas: readonly number[];
}

/** The log of a mound over a winter, kept as the product keeps it: what is said and what the device sends become facts, and are folded. */
export interface Book {
  readonly ledger: Ledger;
  /** Of the bullpen that is open. */
  readonly session: SessionEntry;
  readonly care: ArmCare;
  /** Another day's bullpen: its session, and the fastballs that the baseline asks for. */
  open(fastballs: number): void;
  close(): void;
  /** A trial of this work, or, with its letter, the one that was begun. */
  begin(work: Work): string;
  resume(letter: string): void;
  throws(count: number, work: Work): void;
  say(said: Said): void;
}

const MOUND = 'winter';
/** A day in autumn, noon; three days from bullpen to bullpen, half a minute from throw to throw. */
const FIRST_MS = Date.UTC(2026, 10, 2, 18);
const DAY_MS = 86_400_000;
const DAYS_APART = 3;
const THROW_MS = 30_000;

interface Bullpens {
  /** Throws planned for each. */
  readonly planned: number;
  readonly source: Omit<Source, 'sequence' | 'time'>;
}

export function newBook(arm: Arm, { planned, source }: Bullpens): Book {
  let ledger = emptyLedger(MOUND);
  let atMs = FIRST_MS;
  let opened = 0;
  let sequence = 0;
  const { profile, zone } = arm;
  const id = (): string => `day-${opened}`;
  const fold = (by: string, said: Said): void => {
    ledger = foldFact(ledger, { place: ledger.place + 1, mound: MOUND, atMs, by, version: FACT_VERSION, said });
  };
  const say = (said: Said): void => fold('coach', said);
  const measure = (body: ThrowBody | null): void => {
    atMs += THROW_MS;
    if (body === null) return;
    sequence += 1;
    fold(`device:${source.device}`, { kind: 'throw-measured', source: { ...source, sequence, time: atMs }, body });
  };
  const session = (): SessionEntry => sessionIn(ledger, id())!;
  return {
    get ledger() { return ledger; },
    get session() { return session(); },
    get care() { return armCareView(session(), daysOf(countsOf(thrownBy(ledger, id())))); },
    open: (fastballs) => {
      atMs = FIRST_MS + opened * DAYS_APART * DAY_MS;
      opened += 1;
      arm.nextDay();
      say({ kind: 'session-opened', session: id(), athlete: profile, timeZone: 'UTC', stage: 'mound', distanceM: DEFAULT_DISTANCE_M.mound, effort: 'full' });
      if (opened === 1) say({ kind: 'zone-set', session: id(), zone, speedBand: null, reason: null });
      say({ kind: 'count-planned', session: id(), throws: planned, dayMost: null });
      say({ kind: 'intent-set', session: id(), intent: profile.mainFastball });
      for (let thrown = 0; thrown < fastballs; thrown += 1) measure(arm.throws({ kind: 'fastball' }));
    },
    close: () => say({ kind: 'session-closed', session: id() }),
    begin: (work) => {
      say({ kind: 'trial-begun', session: id(), ...meantBy(work) });
      return session().trial!;
    },
    resume: (letter) => say({ kind: 'trial-resumed', session: id(), trial: letter }),
    throws: (count, { family, ideas }) => {
      for (let thrown = 0; thrown < count; thrown += 1) measure(arm.throws({ kind: 'changeup', family, ideas }));
    },
    say,
  };
}

/** All that the log knows of an idea is how the ball was held and what was said: even numbers are grips, odd ones cues. */
function meantBy({ family, ideas }: Work): { intent: Intent; family: Family; grip: Grip; cue: Cue | null } {
  const grips = ideas.filter((idea) => idea % 2 === 0);
  const cues = ideas.filter((idea) => idea % 2 === 1);
  const grip: Grip = { ...STARTING_GRIP[family], thumbDeg: grips.reduce((sum, idea) => sum + 2 ** (idea / 2), 0) };
  const cue: Cue | null = cues.length === 0 ? null : { words: `cue ${cues.join(' and ')}`, focus: 'external' };
  return { intent: FAMILY_INTENT[family], family, grip, cue };
}
