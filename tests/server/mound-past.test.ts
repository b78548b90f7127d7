import { expect, test } from 'vitest';
import type { Fact } from '../../core/facts/fact.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, type Ledger, type Shelf, type Thrown } from '../../core/session/ledger.ts';
import { closedAtHand, putAway } from '../../core/session/put-away.ts';
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

/** Weeks apart, so that kept states are without the older sessions; yet in the last one throws of all of them change hands. */
function longAgo() {
  const story = new Story();
  const first: number[] = [];
  for (const [index, athlete] of ['ada', 'bo', 'ada', 'bo', 'ada'].entries()) {
    const session = `s${index + 1}`;
    story.later(21 * 24).open(session, athlete).intent(session, 'four-seam');
    first.push(fiveFastballs(story)[0]!);
    for (let count = 0; count < 260; count += 1) story.throw(90 - index, 16, -6);
    if (index === 1) story.say({ kind: 'throws-moved', places: [first[0]!], session });
    if (index === 3) story.say({ kind: 'throws-excluded', session: 's1', places: [first[0]! + 1], reason: 'slipped' });
    if (index === 4) story.say({ kind: 'throws-moved', places: [first[0]!, first[1]!, first[2]!], session });
    story.say({ kind: 'session-closed', session });
  }
  story.say({ kind: 'note-written', session: 's1', text: 'looked at again', place: null });
  return { facts: story.facts, sessions: ['s1', 's2', 's3', 's4', 's5'] };
}

/** Everything closed is put away before a session opens, as a server does. */
function followed(facts: readonly Fact[]): { readonly past: MoundPast; readonly ledger: Ledger } {
  const packs: Thrown[] = [];
  const shelf: Shelf = { bring: (_, pack) => packs[pack]! };
  const reading = { read: (after: number, through: number) => facts.slice(after, through), fold: foldFact };
  const past = new MoundPast('north-1', reading);
  let ledger: Ledger = emptyLedger('north-1');
  for (const fact of facts) {
    if (fact.said.kind === 'session-opened') for (const session of closedAtHand(ledger)) ledger = putAway(ledger, session, packs.push(ledger.throws[session]!) - 1, shelf);
    const before = ledger;
    ledger = foldFact(before, fact);
    past.take(fact, before, ledger);
  }
  return { past, ledger };
}

const PASTS = { 'a long past': longPast(), 'sessions of long ago': longAgo(), 'a busy day': busyDay(7, 'north-1', 'summary', 160), 'another busy day': busyDay(8, 'north-1', 'summary', 160) };

test.each(Object.keys(PASTS) as (keyof typeof PASTS)[])('a recording cut out of %s is the one that folding all of its facts gives', (name) => {
  const { facts, sessions } = PASTS[name];
  const { past, ledger } = followed(facts);
  for (const session of sessions) expect(past.slice(session, ledger)).toEqual(sliceOf(facts, session));
});
