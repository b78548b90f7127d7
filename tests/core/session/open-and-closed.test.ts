import { describe, expect, it } from 'vitest';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, openSessions, sessionIn, sessionsIn, type Ledger } from '../../../core/session/ledger.ts';
import { busyDay } from '../../parity/sessions.ts';

/** The mound's state after every fact of a day on which sessions open, close, are passed to and are spoken of afterwards. */
function places(seed: number): readonly Ledger[] {
  let ledger = emptyLedger('north-1');
  return busyDay(seed, 'north-1', 'summary', 120).facts.map((fact) => (ledger = foldFact(ledger, fact)));
}

describe.each([3, 4])('Open and closed sessions of a busy day, seed %i', (seed) => {
  it('are each in one place only, by whether they are closed, and in the order in which they opened', () => {
    for (const ledger of places(seed)) {
      expect(Object.values(ledger.open).every(({ closedAtMs }) => closedAtMs === null)).toBe(true);
      expect(Object.values(ledger.closed).every(({ closedAtMs }) => closedAtMs !== null)).toBe(true);
      expect([...Object.keys(ledger.open), ...Object.keys(ledger.closed)].toSorted()).toEqual(ledger.order.toSorted());
      expect(sessionsIn(ledger).map(({ id }) => id)).toEqual(ledger.order);
      expect(openSessions(ledger).map(({ id }) => id)).toEqual(ledger.order.filter((id) => sessionIn(ledger, id)!.closedAtMs === null));
    }
  });

  it('that are closed are the same object as before as long as nobody speaks of them', () => {
    const kept: boolean[] = [];
    let before = emptyLedger('north-1');
    for (const fact of busyDay(seed, 'north-1', 'summary', 120).facts) {
      const after = foldFact(before, fact);
      const speaksOf = 'session' in fact.said ? fact.said.session : null;
      if (speaksOf === null || after.closed[speaksOf] === undefined) kept.push(after.closed === before.closed);
      before = after;
    }
    expect(kept.length).toBeGreaterThan(50);
    expect(kept.every((isSame) => isSame)).toBe(true);
  });
});
