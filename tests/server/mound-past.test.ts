import { expect, test } from 'vitest';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../core/session/ledger.ts';
import { sliceOf } from '../../core/session/recorded.ts';
import { MoundPast } from '../../server/mound-past.ts';
import { busyDay } from '../parity/sessions.ts';
import { fiveFastballs, Story } from '../core/session/story.ts';

/** Enough of one athlete's throws for several kept states between the first session and the last. */
function longPast() {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  const [first] = fiveFastballs(story);
  for (let count = 0; count < 1500; count += 1) story.throw(90, 16, -6);
  story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada').intent('s2', 'four-seam');
  fiveFastballs(story);
  for (let count = 0; count < 700; count += 1) story.throw(89, 15, -6);
  story.say({ kind: 'throws-moved', places: [first!], session: 's2' });
  story.open('s3', 'bo').throw(80, 10, -6);
  return { facts: story.facts, sessions: ['s1', 's2', 's3'] };
}

test.each([['a long past', longPast()], ['a busy day', busyDay(7, 'north-1', 'summary', 120)]])('a recording cut out of %s is the one that folding all of its facts gives', (_, { facts, sessions }) => {
  const past = new MoundPast();
  let ledger: Ledger = emptyLedger('north-1');
  for (const fact of facts) {
    const before = ledger;
    ledger = foldFact(before, fact);
    past.take(fact, before, ledger);
  }
  for (const session of sessions) expect(past.slice(session, ledger.sessions[session]!.openedPlace)).toEqual(sliceOf(facts, session));
});
