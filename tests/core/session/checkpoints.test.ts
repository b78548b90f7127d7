import { expect, it } from 'vitest';
import { checkpointsOf, grown, ledgerAt, type Checkpoints } from '../../../core/session/checkpoints.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { held } from '../../../core/session/growth.ts';
import { emptyLedger, throwsOf } from '../../../core/session/ledger.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { longSession, MOUND, SESSION } from '../../bench/long-session.ts';

const slice = (throws: number) => sliceOf(longSession(throws, 'summary'), SESSION)!;

it('scrubbing an evening of 200 throws meets the same throws at every place, so that what was worked out of them holds', () => {
  const evening = checkpointsOf(slice(200), SESSION);
  const atTheEnd = new Set(throwsOf(evening.newest, SESSION));
  for (const applied of [9, 38, 251, 402]) {
    const then = throwsOf(ledgerAt(evening, applied), SESSION);
    expect(then.length).toBeGreaterThan(0);
    expect(then.every((entry) => atTheEnd.has(entry))).toBe(true);
  }
});

it('a recording that is followed from its first facts through a thousand throws keeps few of its ledgers, and shows every place as it was', () => {
  const { carry, facts } = slice(1100);
  let followed: Checkpoints = checkpointsOf({ carry, facts: facts.slice(0, 3) }, SESSION);
  for (const through of [200, 1999, 2150, facts.length]) followed = grown(followed, { held: held(carry), facts: facts.slice(0, through) })!;
  expect(followed.facts).toHaveLength(facts.length);
  expect(followed.ledgers.length).toBeLessThanOrEqual(2000);
  for (const applied of [1, 2, 3, 199, 1000, 1999, 2101, facts.length - 1, facts.length]) {
    expect(ledgerAt(followed, applied)).toEqual(facts.slice(0, applied).reduce(foldFact, emptyLedger(MOUND)));
  }
});
