import { expect, it } from 'vitest';
import type { CoachSays } from '../../../core/facts/coach.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, sessionIn, type Ledger } from '../../../core/session/ledger.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const cue = (words: string) => ({ words, focus: 'external' }) as const;
const trial = (session: string, words: string): CoachSays => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: cue(words) });

/** Two athletes over four sittings, with everything said that outlives a session or is pooled over them. */
function week(): Story {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.say(trial('s1', 'through')).say(trial('s1', 'over')).say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null });
  story.say({ kind: 'comparison-opened', session: 's1', k: 1, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline: 1 });
  const first = [story.throw(82, 8, -10), story.throw(82, 9, -10)];
  story.say({ kind: 'gate-set', session: 's1', stage: 'mound', gate: { comfort: true, shareAbove: 0.3 } });
  story.say({ kind: 'decision-set', session: 's1', beforeS: 0.2, basis: 'same-distance' });
  story.say({ kind: 'arm-reported', session: 's1', from: 'glance', said: 'sore', areas: ['shoulder'] });
  story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'bo', 'left').intent('s2', 'four-seam');
  fiveFastballs(story, 1);
  story.say({ kind: 'throws-moved', places: [first[0]!], session: 's2' });
  story.hear({ kind: 'arm-elsewhere', athlete: 'ada', session: null, days: [{ day: '2026-09-20', throws: [{ stage: 'mound', effort: 'full', count: 25 }] }], pain: null, soreness: null, answeredAtMs: null });
  story.open('s3', 'ada').intent('s3', 'four-seam');
  fiveFastballs(story);
  story.say(trial('s3', 'over')).say(trial('s3', 'through'));
  story.say({ kind: 'comparison-continued', session: 's3', k: 1, day: { session: 's3', a: 'B', b: 'A', baseline: 2 } });
  story.say({ kind: 'feedback-set', session: 's3', mode: { kind: 'fading' }, askFirst: true });
  story.say({ kind: 'decision-set', session: 's3', beforeS: 0.15, basis: 'same-time' });
  const guessed = story.throw(82, 8, -10);
  story.say({ kind: 'throw-guessed', session: 's3', place: guessed, went: null, moved: { vertical: 'below', side: 'on-target' } });
  story.say({ kind: 'arm-reported', session: 's3', from: 'bench', said: 'pain', areas: [] });
  story.say({ kind: 'session-closed', session: 's3' }).say({ kind: 'session-closed', session: 's2' }).open('s4', 'ada');
  story.throw(90, 16, -6);
  story.say({ kind: 'pain-answered', session: 's4', answer: 'professional-looked', words: 'Dr. Invented looked' });
  return story.say({ kind: 'count-planned', session: 's4', throws: 30, dayMost: 60 });
}

it.each(['s1', 's2', 's3', 's4'])('%s played from its slice shows at every place the care, feedback and advice that were shown live', (session) => {
  const { facts } = week();
  const shown = (ledger: Ledger) => [moundView(ledger, session).session, sessionIn(ledger, session)?.planned];
  const live = new Map<number, unknown>();
  let ledger = emptyLedger('north-1');
  for (const fact of facts) {
    ledger = foldFact(ledger, fact);
    live.set(fact.place, shown(ledger));
  }
  const slice = sliceOf(facts, session)!;
  let played: Ledger = JSON.parse(JSON.stringify(slice.carry)) as Ledger;
  for (const fact of slice.facts) {
    played = foldFact(played, fact);
    expect(shown(played)).toEqual(live.get(fact.place));
  }
  expect(shown(played)).toEqual(shown(ledger));
});

it('a throw that later leaves a closed session counts for the day of whoever threw it, until it leaves', () => {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  const [first] = fiveFastballs(story);
  story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'bo').open('s3', 'ada');
  story.say({ kind: 'throws-moved', places: [first!], session: 's2' }).intent('s3', 'four-seam');
  const { carry, facts } = sliceOf(story.facts, 's3')!;
  const opened = foldFact(carry, facts[0]!);
  expect(moundView(opened, 's3').session?.armCare.moundThrows).toBe(5);
});
