import type { Fact } from '../facts/fact.ts';
import { earlierBaselines } from './fastballs.ts';
import { onlySessions, sessionIn, throwsOf, type Ledger, type ThrowEntry } from './ledger.ts';
import { daysOf, lastDays, placedCounts } from './throwing-days.ts';
import { inRuns } from './thrown.ts';

/**
 * Reading a long log session by session: which sessions no later fact touches any more, and the ledger without them. So all
 * throws of a mound are read with no more of them in memory than the sessions that can still change have.
 */

/** The last place at which anything is said that changes a throw or a session. */
export interface Touches {
  /** By session: facts that name it. */
  readonly sessions: Map<string, number>;
  /** By place of the throw: facts that move it. */
  readonly moved: Map<number, number>;
  /** By the number of a device: facts that correct it. */
  readonly corrected: Map<string, number>;
  /** Of throws that nobody has. */
  claimed: number;
  /** The newest fact read. */
  through: number;
}

export function noTouches(): Touches {
  return { sessions: new Map(), moved: new Map(), corrected: new Map(), claimed: 0, through: 0 };
}

/** Takes note of the next fact; changes `touches`. */
export function noteTouches(touches: Touches, { place, said }: Fact): void {
  touches.through = place;
  if ('session' in said && said.session !== null) touches.sessions.set(said.session, place);
  switch (said.kind) {
    case 'throws-moved':
      for (const moved of said.places) touches.moved.set(moved, place);
      if (said.from !== undefined && said.from !== null) touches.sessions.set(said.from, place);
      return;
    case 'throws-claimed': touches.claimed = place; return;
    case 'throw-corrected': touches.corrected.set(numberOf(said.source.device, said.corrects), place);
  }
}

/** The last place at which something has to do with a session, as far as its throws are known by now. */
export function lastTouch(touches: Touches, ledger: Ledger, session: string): number {
  return throwsOf(ledger, session).reduce((last, entry) => Math.max(last, entry.place, touchOf(touches, entry)), touches.sessions.get(session) ?? 0);
}

/** The sessions of a ledger that are now as they will be, in the order of opening. */
export function settledIn(ledger: Ledger, touches: Touches): string[] {
  return ledger.order.filter((id) => (ledger.active !== id || ledger.place >= touches.through) && (touches.sessions.get(id) ?? 0) <= ledger.place && lastTouch(touches, ledger, id) <= ledger.place);
}

/** The ledger as the next facts need it: without these sessions, whose athletes bring along what they showed, and without throws that nobody will claim. */
export function withoutSettled(ledger: Ledger, settled: readonly string[], touches: Touches): Ledger {
  const gone = new Set(settled);
  const unclaimed = ledger.unclaimed.flat();
  const left = unclaimed.filter((entry) => touches.claimed > ledger.place || touchOf(touches, entry) > ledger.place);
  const next: Ledger = left.length === unclaimed.length ? ledger : { ...ledger, unclaimed: inRuns(left) };
  if (gone.size === 0) return next;
  return {
    ...next,
    ...onlySessions(ledger, ledger.order.filter((id) => !gone.has(id))),
    throws: Object.fromEntries(Object.entries(ledger.throws).filter(([id]) => !gone.has(id))),
    athletes: { ...ledger.athletes, ...broughtBy(ledger, settled) },
  };
}

function broughtBy(ledger: Ledger, settled: readonly string[]): Ledger['athletes'] {
  const athletes = new Set(settled.map((id) => sessionIn(ledger, id)!.athlete.id));
  return Object.fromEntries([...athletes].map((id) => {
    const entry = ledger.athletes[id]!;
    const thrown = settled.filter((session) => sessionIn(ledger, session)!.athlete.id === id).flatMap((session) => throwsOf(ledger, session));
    return [id, { ...entry, baselines: earlierBaselines(ledger, id), arm: { ...entry.arm, days: lastDays([...entry.arm.days, ...daysOf(placedCounts(thrown))]) } }];
  }));
}

function touchOf({ moved, corrected }: Touches, { place, source }: ThrowEntry): number {
  return Math.max(moved.get(place) ?? 0, corrected.size === 0 ? 0 : (corrected.get(numberOf(source.device, source)) ?? 0));
}

/** The name of a measurement: a device counts within each run. */
export function numberOf(device: string, { run, sequence }: { readonly run: string; readonly sequence: number }): string {
  return `${device} ${run} ${sequence}`;
}
