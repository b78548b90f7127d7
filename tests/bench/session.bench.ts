import { expect, test } from 'vitest';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import type { Fact } from '../../core/facts/fact.ts';
import { longSession, MOUND, SESSION } from './long-session.ts';
import { medianMs, report } from './measure.ts';

// Ratios rather than times: they say the same on a slow machine and on a fast one.
const THROWS = 200;
const STRETCH = 20;
const facts = longSession(THROWS);

/** Facts that nothing has been remembered of. */
const unread = (): Fact[] => structuredClone(facts);

const foldAll = (read: readonly Fact[]): Ledger => read.reduce(foldFact, emptyLedger(MOUND));

/** The median cost of one throw, from its fact to the view, over a stretch of throws that ends with the given one. */
function throwMs(last: number): number {
  const read = unread();
  const before = 1 + 2 * (last - STRETCH);
  let ledger = foldAll(read.slice(0, before));
  moundView(ledger, SESSION);
  const coming = read.slice(before, 1 + 2 * last).values();
  return medianMs(STRETCH, () => {
    ledger = foldFact(ledger, coming.next().value!);
    const thrown = coming.next().value!;
    return () => {
      ledger = foldFact(ledger, thrown);
      moundView(ledger, SESSION);
    };
  });
}

/** The cost of the same view for somebody who has seen nothing yet. */
const fromScratchMs = (): number => medianMs(7, () => {
  const read = unread();
  return () => moundView(foldAll(read), SESSION);
});

function warmUp(): void {
  throwMs(THROWS);
  fromScratchMs();
}

test(`the ${THROWS}th throw costs less than a tenth of reading the session from scratch`, () => {
  warmUp();
  const one = throwMs(THROWS);
  const all = fromScratchMs();
  report(`throw ${THROWS}: ${one.toFixed(2)} ms, the session from scratch: ${all.toFixed(1)} ms, ratio ${(one / all).toFixed(3)}`);
  expect(one / all).toBeLessThan(0.1);
});

test('five times the throws make a throw no more than ten times as costly', () => {
  warmUp();
  const early = throwMs(THROWS / 5);
  const late = throwMs(THROWS);
  report(`throw ${THROWS / 5}: ${early.toFixed(2)} ms, throw ${THROWS}: ${late.toFixed(2)} ms, ratio ${(late / early).toFixed(1)}`);
  expect(late / early).toBeLessThan(10);
});
