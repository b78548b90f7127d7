import { describe, expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { judgingOf } from '../../../core/session/judged.ts';
import { emptyLedger, sessionIn, thrownBy, type Ledger } from '../../../core/session/ledger.ts';
import { noTouches, noteTouches, settledIn, withoutSettled } from '../../../core/session/settled.ts';
import { throwUnrounded } from '../../../core/session/throws.ts';
import { busyDay } from '../../parity/sessions.ts';

/** Every number of every throw of a session. */
function readingsOf(ledger: Ledger, id: string): string {
  const [session, thrown] = [sessionIn(ledger, id)!, thrownBy(ledger, id)];
  const judging = judgingOf(session, thrown);
  return JSON.stringify(thrown.flat().map((entry, index) => [throwUnrounded(entry, index + 1, judging, session.decision), entry.tags[id]]));
}

/** Session by session as each is let go, with what the ledger still held at most. */
function readOnce(facts: readonly Fact[]): { readonly sessions: ReadonlyMap<string, string>; readonly most: number } {
  const touches = noTouches();
  for (const fact of facts) noteTouches(touches, fact);
  const sessions = new Map<string, string>();
  let [ledger, most] = [emptyLedger(facts[0]!.mound), 0];
  for (const fact of facts) {
    ledger = foldFact(ledger, fact);
    const settled = settledIn(ledger, touches);
    for (const id of settled) {
      expect(sessions.has(id)).toBe(false);
      sessions.set(id, readingsOf(ledger, id));
    }
    ledger = withoutSettled(ledger, settled, touches);
    most = Math.max(most, ledger.order.length);
  }
  return { sessions, most };
}

describe('A log that is read session by session', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])('gives the throws of every session as the whole log does, whatever was moved, corrected and claimed (seed %i)', (seed) => {
    const { facts, sessions } = busyDay(seed, 'north-1', 'summary', 120);
    const whole = facts.reduce(foldFact, emptyLedger('north-1'));
    const once = readOnce(facts);
    expect([...once.sessions.keys()].toSorted()).toEqual([...sessions].toSorted());
    for (const [id, readings] of once.sessions) expect(readings).toBe(readingsOf(whole, id));
  });

  test('holds no more sessions than can still change, and baselines are counted on into the next one', () => {
    const days = [1, 2, 3, 4].flatMap((day) => evening(day));
    const facts = days.map((fact, index): Fact => ({ ...fact, place: index + 1, atMs: 1_790_000_000_000 + index * 20_000 }));
    const { sessions, most } = readOnce(facts);
    expect(most).toBe(1);
    const whole = facts.reduce(foldFact, emptyLedger('north-1'));
    for (const [id, readings] of sessions) expect(readings).toBe(readingsOf(whole, id));
    expect(JSON.parse(sessions.get('s-3')!)[0][0].separation).toMatchObject({ baseline: 3 });
  });
});

/** A session of eight fastballs and one changeup at first, closed. */
function evening(day: number): Fact[] {
  const session = `s-${day}`;
  const fact = (said: Fact['said'], by = 'coach'): Fact => ({ place: 0, mound: 'north-1', atMs: 0, by, version: 1, said });
  const thrown = (sequence: number, speed: number): Fact => fact({
    kind: 'throw-measured',
    source: { device: 'lamp-1', run: `r${day}`, sequence, time: sequence, sight: 'full-flight', axis: 'none', units: { distance: 'm', speed: 'm/s', movement: 'm' } },
    body: { summary: { releaseSpeed: speed, verticalBreak: 0.4 + 0.01 * sequence, horizontalBreak: -0.1 - 0.02 * sequence } },
  }, 'device:lamp-1');
  return [
    fact({ kind: 'session-opened', session, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.44, effort: 'full', athlete: { id: 'ana', name: 'Ana', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' } }),
    fact({ kind: 'intent-set', session, intent: 'changeup' }), thrown(1, 33),
    fact({ kind: 'intent-set', session, intent: 'four-seam' }), ...[2, 3, 4, 5, 6, 7, 8, 9].map((sequence) => thrown(sequence, 38 + 0.1 * sequence)),
    fact({ kind: 'session-closed', session }),
  ];
}
