import { describe, expect, it } from 'vitest';
import { mayThrow } from '../../../core/coaching/arm-care.ts';
import type { CoachSays } from '../../../core/facts/coach.ts';
import { objection } from '../../../core/session/admit.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { comparisonsIn, fiveFastballs, Story, ZONE } from './story.ts';

const sessionOf = (story: Story, id: string | null = null) => moundView(story.ledger(), id).session!;
const trial = (session: string, words: string): CoachSays => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
const comparison = (session: string, k: number, more: Partial<Extract<CoachSays, { kind: 'comparison-opened' }>> = {}): CoachSays =>
  ({ kind: 'comparison-opened', session, k, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline: 1, ...more });

/** Five fastballs, then two trials with a zone; trial B is worked on. */
function evening(session = 's1', story = new Story()): Story {
  fiveFastballs(story.open(session, 'ada').intent(session, 'four-seam'));
  return story.say(trial(session, 'through the glove')).say(trial(session, 'over the top')).say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null });
}
const onTarget = (story: Story, count: number): Story => {
  for (let n = 0; n < count; n += 1) story.throw(82, 8, -10);
  return story;
};

describe('the gate of the present stage', () => {
  const comfortable = { kind: 'comfort-said', session: 's1', from: 'glance', comfortable: true } as const;

  it('is met by ten of ten and the athlete’s word, and then leads on', () => {
    const story = onTarget(evening(), 10);
    expect(sessionOf(story).progress.advice).toMatchObject({ kind: 'stay', gate: { needs: [{ code: 'ask-comfort' }] } });
    expect(sessionOf(story.say(comfortable)).progress.advice).toMatchObject({ kind: 'go-on', from: 'mound', to: 'hitters' });
  });

  it('gathers its share over days of the same trial, and of no other', () => {
    const story = onTarget(evening(), 6).say({ kind: 'session-closed', session: 's1' });
    onTarget(evening('s2', story), 4);
    expect(sessionOf(story).progress.advice).toMatchObject({ gate: { needs: [{ code: 'ask-comfort' }] } });
    story.say({ kind: 'trial-resumed', session: 's2', trial: 'A' });
    expect(sessionOf(story).progress.advice).toMatchObject({ gate: { needs: [{ code: 'ask-comfort' }, { code: 'share-not-shown', hits: 0, judged: 0 }] } });
    const slice = sliceOf(story.facts, 's2')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2').session!.progress).toEqual(sessionOf(story).progress);
  });

  it('can be set, and stays set for the athlete’s next session', () => {
    const story = evening().say({ kind: 'gate-set', session: 's1', stage: 'mound', gate: { comfort: false, shareAbove: 0.2 } }).say({ kind: 'session-closed', session: 's1' });
    const { advice, stages } = sessionOf(onTarget(evening('s2', story), 5)).progress;
    expect(stages.find(({ stage }) => stage === 'mound')!.gate).toEqual({ comfort: false, shareAbove: 0.2 });
    expect(advice).toMatchObject({ kind: 'go-on' });
  });

  it('without a zone, as catch play at first, is comfort alone', () => {
    const story = evening().say({ kind: 'stage-set', session: 's1', stage: 'catch-play', distanceM: 18, effort: 'easy' });
    expect(sessionOf(story).progress.advice).toMatchObject({ kind: 'stay', gate: { comfortAlone: true } });
  });

  it('is passed when the coach says so, with the reason kept', () => {
    const says: CoachSays = { kind: 'gate-passed', session: 's1', stage: 'mound', trial: 'B', reason: 'season begins' };
    expect(objection(evening().ledger(), says)).toBeNull();
    expect(objection(evening().ledger(), { ...says, trial: 'C' })).toMatchObject({ code: 'no-such-trial' });
    expect(sessionOf(evening().say(says)).progress.stages.flatMap(({ passed }) => passed)).toMatchObject([{ stage: 'mound', trial: 'B', reason: 'season begins' }]);
  });

  it('gives no advice once pain was reported', () => {
    const story = onTarget(evening(), 10).say(comfortable).say({ kind: 'arm-reported', session: 's1', from: 'glance', said: 'pain', areas: ['shoulder'] });
    expect(sessionOf(story).progress.advice).toEqual({ kind: 'no-advice', because: 'pain-reported' });
  });
});

describe('a comparison', () => {
  it('fixes trials, zone, baseline and number: moving the target afterwards does not move it', () => {
    const story = evening().say(comparison('s1', 1)).say({ kind: 'zone-set', session: 's1', zone: { ...ZONE, verticalM: -0.4 }, speedBand: null, reason: 'dragged' });
    expect(comparisonsIn(story, 's1')).toMatchObject({ nextK: 2, here: [{ k: 1, zone: { verticalM: -0.2032 }, days: [{ session: 's1', a: 'A', b: 'B', baseline: 1 }] }], before: [] });
  });

  it('gets the athlete’s next number and no other, over sessions', () => {
    const story = evening().say(comparison('s1', 1));
    expect(objection(story.ledger(), comparison('s1', 1))).toMatchObject({ code: 'not-the-next-number', path: 'k' });
    expect(objection(story.ledger(), comparison('s1', 3))).toMatchObject({ code: 'not-the-next-number' });
    evening('s2', story.say({ kind: 'session-closed', session: 's1' }));
    expect(comparisonsIn(story, 's2')).toMatchObject({ nextK: 2, here: [], before: [{ k: 1 }] });
    expect(objection(story.ledger(), comparison('s2', 2, { baseline: 2 }))).toBeNull();
  });

  it('is refused of one trial with itself, of a trial that is not there, and against no baseline', () => {
    const ledger = evening().ledger();
    expect(objection(ledger, comparison('s1', 1, { b: 'A' }))).toMatchObject({ code: 'one-trial', path: 'b' });
    expect(objection(ledger, comparison('s1', 1, { b: 'C' }))).toMatchObject({ code: 'no-such-trial', path: 'b' });
    expect(objection(ledger, comparison('s1', 1, { baseline: 2 }))).toMatchObject({ code: 'no-such-baseline', path: 'baseline' });
  });

  it('takes another day of the same trials once, and only of the same athlete', () => {
    const story = evening().say(comparison('s1', 1)).say({ kind: 'session-closed', session: 's1' });
    evening('s2', story);
    const day: CoachSays = { kind: 'comparison-continued', session: 's2', k: 1, day: { session: 's2', a: 'A', b: 'B', baseline: 2 } };
    expect(objection(story.ledger(), day)).toBeNull();
    story.say(day);
    expect(comparisonsIn(story, 's2').here).toMatchObject([{ k: 1, days: [{ session: 's1' }, { session: 's2', baseline: 2 }] }]);
    expect(objection(story.ledger(), day)).toMatchObject({ code: 'day-known' });
    story.open('s3', 'bo', 'left');
    expect(objection(story.ledger(), { ...day, k: 9 })).toMatchObject({ code: 'no-such-comparison' });
    expect(comparisonsIn(story, 's1').here).toMatchObject([{ days: [{ session: 's1' }] }]);
  });
});

describe('the day’s own most', () => {
  it('of a league stays with the athlete, and the plan is for the day', () => {
    const story = evening().say({ kind: 'count-planned', session: 's1', throws: 30, dayMost: 60 }).say({ kind: 'session-closed', session: 's1' });
    expect(sessionOf(evening('s2', story))).toMatchObject({ plannedThrows: 30, armCare: { dayMost: 60, dayMostFrom: 'own-rule' } });
    expect(sessionOf(story.later(24).open('s3', 'ada'), 's3')).toMatchObject({ plannedThrows: null, armCare: { dayMost: 60, dayMostFrom: 'own-rule' } });
  });

  it('leaves no more throws than what is planned, and none after pain', () => {
    const story = evening().say({ kind: 'count-planned', session: 's1', throws: 7, dayMost: null });
    expect(sessionOf(story)).toMatchObject({ plannedThrows: 7, armCare: { left: 2 } });
    story.say({ kind: 'arm-reported', session: 's1', from: 'bench', said: 'numb', areas: [] });
    expect(mayThrow(sessionOf(story).armCare)).toBe(false);
  });
});

describe('what the body tells in a session', () => {
  it('is the speed of the arm where the device gives it: 2 m/s less for the changeup is a slowing body', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    const delivered = (armSpeed: number, index: number) => story.throwWith({ armSpeed: armSpeed + (index % 3) / 10 });
    for (let n = 0; n < 10; n += 1) delivered(36, n);
    story.say(trial('s1', 'through the glove'));
    for (let n = 0; n < 10; n += 1) delivered(34, n);
    const { honestArm } = sessionOf(story);
    expect(honestArm).toMatchObject({ kind: 'slowing', basis: 'direct', evidence: [{ measure: 'armSpeedMps', way: 'slowing' }, { measure: 'fastballSpeedMps' }] });
    expect(honestArm.evidence[0]!.difference).toBeCloseTo(-2, 3);
  });

  it('cannot tell from a device that sends neither arm nor release', () => {
    expect(sessionOf(onTarget(evening(), 5)).honestArm).toMatchObject({ kind: 'cannot-tell' });
  });
});

describe('fatigue', () => {
  it('is asked about when the fastball sinks against its own first fifteen', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    for (let n = 0; n < 15; n += 1) story.throw(90, 16, -6);
    expect(sessionOf(story).fatigue).toEqual({ kind: 'forming', have: 15, need: 15 });
    for (let n = 0; n < 8; n += 1) story.throw(87, 16, -6);
    expect(sessionOf(story).fatigue.kind).toBe('ask-the-pitcher');
    for (let n = 0; n < 8; n += 1) story.throw(85, 16, -6);
    expect(sessionOf(story).fatigue.kind).toBe('ask-to-end');
  });
});

describe('an observation', () => {
  it('is kept with the trial it was ticked on', () => {
    const says: CoachSays = { kind: 'observation-ticked', session: 's1', what: 'loose-wrist-and-forearm', seen: true, place: null };
    expect(sessionOf(evening().say(says)).observations).toMatchObject([{ what: 'loose-wrist-and-forearm', seen: true, trial: 'B' }]);
    expect(objection(evening().ledger(), { ...says, place: 1 })).toMatchObject({ code: 'not-of-this-session' });
  });
});
