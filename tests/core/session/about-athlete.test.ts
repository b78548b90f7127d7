import { expect, test } from 'vitest';
import type { Fact } from '../../../core/facts/fact.ts';
import { aboutAthlete, erasing, withoutFrom } from '../../../core/session/about-athlete.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, summary, ZONE } from './story.ts';

/** Ana and Ben share a mound: they alternate, throws are moved both ways, and what nobody has comes in between. */
function sharedMound(): Story {
  const story = new Story().open('ben-session', 'ben').intent('ben-session', 'four-seam');
  fiveFastballs(story);
  story.open('ana-session', 'ana').intent('ana-session', 'changeup');
  const [anas, bens] = [story.throw(78, 8, -10), story.throw(89, 16, -6)];
  story.say({ kind: 'throws-moved', places: [bens], session: 'ben-session', from: 'ana-session' });
  story.correct(6, summary(79, 8, -10));
  story.say({ kind: 'zone-set', session: 'ana-session', zone: ZONE, speedBand: null, reason: null });
  story.say({ kind: 'note-written', session: 'ana-session', text: 'Ana liked it', place: anas });
  story.hear({ kind: 'arm-elsewhere', athlete: 'ana', session: 'ana-session', days: [], pain: null, soreness: null, answeredAtMs: 1_790_000_000_000 });
  story.say({ kind: 'mound-passed', session: 'ben-session' }).intent('ben-session', 'changeup');
  const strayed = story.throw(80, 9, -9);
  story.say({ kind: 'throws-moved', places: [strayed], session: 'ana-session', from: 'ben-session' });
  story.throw(81, 10, -9);
  story.say({ kind: 'mound-passed', session: 'ana-session' });
  story.throw(77, 7, -11);
  story.say({ kind: 'session-closed', session: 'ana-session' });
  story.throw(82, 11, -8);
  return story;
}

function without(story: Story, athlete: string): Fact[] {
  const { facts, movedOut } = aboutAthlete(story.facts, athlete);
  return story.facts.map((fact) => (facts.includes(fact) ? { ...fact, by: 'coach', said: erasing(fact, 5) } : movedOut.includes(fact) ? { ...fact, said: withoutFrom(fact.said) } : fact));
}

const viewIn = (facts: readonly Fact[], session: string | null) => moundView(facts.reduce(foldFact, emptyLedger('north-1')), session);

test('who is erased leaves the session of the other athlete, and what nobody has, as they were', () => {
  const story = sharedMound();
  const left = without(story, 'ana');
  const before = viewIn(story.facts, 'ben-session');
  expect(before.throws.length).toBe(7);
  expect(before.unclaimed.length).toBe(1);
  expect(viewIn(left, 'ben-session')).toEqual(before);
  expect(viewIn(left, 'ana-session').session).toBeNull();
});

test('nothing of who is erased is left, and every place is', () => {
  const left = without(sharedMound(), 'ana');
  expect(JSON.stringify(left)).not.toMatch(/ana/i);
  expect(left.map(({ place }) => place)).toEqual(left.map((_, index) => index + 1));
});

test('the facts about an athlete are whole: a fold over them alone shows the throws and the note', () => {
  const { facts, throws, sessions, names } = aboutAthlete(sharedMound().facts, 'ana');
  expect({ throws, sessions, names }).toEqual({ throws: 3, sessions: ['ana-session'], names: ['Invented ana'] });
  expect(new Set(facts.map(({ said }) => said.kind))).toEqual(new Set(['session-opened', 'intent-set', 'throw-measured', 'throw-corrected', 'throws-moved', 'zone-set', 'note-written', 'arm-elsewhere', 'mound-passed', 'session-closed']));
});

test('of an athlete nobody has heard of there is nothing', () => {
  expect(aboutAthlete(sharedMound().facts, 'cyd')).toMatchObject({ facts: [], movedOut: [], throws: 0 });
});
