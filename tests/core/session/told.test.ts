import { describe, expect, it } from 'vitest';
import type { ArmElsewhere } from '../../../core/facts/arm-says.ts';
import { coachSaysSchema, type CoachSays } from '../../../core/facts/coach.ts';
import type { FeedbackMode } from '../../../core/facts/feedback-says.ts';
import { objection } from '../../../core/session/admit.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { throwIn } from '../../../core/session/ledger.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const pain = (session: string): CoachSays => ({ kind: 'arm-reported', session, from: 'glance', said: 'pain', areas: ['elbow'] });
const sessionOf = (story: Story, id: string | null = null) => moundView(story.ledger(), id).session!;

function withChangeups(story: Story, mode: FeedbackMode, askFirst: boolean): Story {
  fiveFastballs(story.open('s1', 'ada').intent('s1', 'four-seam'));
  return story
    .say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null })
    .say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null })
    .say({ kind: 'feedback-set', session: 's1', mode, askFirst });
}

describe('the arm on one mound', () => {
  it('is counted by stage and effort of each throw, excluded ones too, against the row of the younger age', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    const [first] = fiveFastballs(story);
    story.say({ kind: 'throws-excluded', session: 's1', places: [first!], reason: 'slipped' });
    story.say({ kind: 'stage-set', session: 's1', stage: 'catch-play', distanceM: 18, effort: 'easy' }).throw(60, 8, -10);
    const { armCare } = sessionOf(story);
    expect(armCare).toMatchObject({ kind: 'under', day: '2026-09-21', moundThrows: 5, source: { age: 24, rowFromAge: 19, house: ['practice-counted', 'no-guideline-over-22'] } });
    expect(armCare.today).toEqual([{ stage: 'catch-play', effort: 'easy', count: 1 }, { stage: 'mound', effort: 'full', count: 5 }]);
  });

  it('keeps the throws of an earlier session of the day, in a recording too', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    fiveFastballs(story);
    story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada');
    story.throw(90, 16, -6);
    expect(sessionOf(story).armCare).toMatchObject({ moundThrows: 6 });
    const slice = sliceOf(story.facts, 's2')!;
    expect([slice.carry.order, slice.carry.open, slice.carry.closed]).toEqual([[], {}, {}]);
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2').session!.armCare).toEqual(sessionOf(story).armCare);
  });

  it('in pain stays stopped over sessions, whatever else is reported, until somebody answers for it', () => {
    const story = new Story().open('s1', 'ada').say(pain('s1')).say({ kind: 'arm-reported', session: 's1', from: 'bench', said: 'nothing', areas: [] });
    expect(sessionOf(story).armCare).toMatchObject({ kind: 'pain-reported', report: { said: 'pain', areas: ['elbow'], from: 'glance' } });
    story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada');
    expect(sessionOf(story).armCare.kind).toBe('pain-reported');
    story.say({ kind: 'pain-answered', session: 's2', answer: 'professional-looked', words: 'Dr. Invented looked on Monday' });
    const { armCare, armTalk } = sessionOf(story);
    expect(armCare.kind).toBe('under');
    expect(armTalk.lastAnswer).toMatchObject({ answer: 'professional-looked', words: 'Dr. Invented looked on Monday' });
    expect(sessionOf(story, 's1').armCare.kind).toBe('pain-reported');
  });

  it('of another athlete on the same mound is untouched by it', () => {
    const story = new Story().open('s1', 'ada').say(pain('s1')).open('s2', 'bo', 'left');
    expect(sessionOf(story, 's2').armCare.kind).toBe('under');
  });

  it('sore stops advice in the next session of the same day', () => {
    const story = new Story().open('s1', 'ada').say({ kind: 'arm-reported', session: 's1', from: 'glance', said: 'sore', areas: ['shoulder'] });
    story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada');
    expect(sessionOf(story).armCare).toMatchObject({ kind: 'soreness-reported', report: { areas: ['shoulder'] } });
  });

  it('is asked about after fifteen throws, and again fifteen after the answer', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    const due = (): boolean => sessionOf(story).armTalk.questionDue;
    for (let count = 1; count <= 14; count += 1) story.throw(90, 16, -6);
    expect(due()).toBe(false);
    story.throw(90, 16, -6);
    expect(due()).toBe(true);
    story.say({ kind: 'arm-reported', session: 's1', from: 'bench', said: 'nothing', areas: [] });
    expect(due()).toBe(false);
  });

  it('can be reported in pain after the session is closed, and only pain that stands can be answered', () => {
    const story = new Story().open('s1', 'ada').say({ kind: 'session-closed', session: 's1' });
    const answer = { kind: 'pain-answered', session: 's1', answer: 'reported-by-mistake', words: 'tapped the wrong name' } as const;
    expect(objection(story.ledger(), pain('s1'))).toBeNull();
    expect(objection(story.ledger(), answer)).toMatchObject({ code: 'no-pain-reported' });
    expect(objection(story.say(pain('s1')).ledger(), answer)).toBeNull();
  });
});

describe('what other mounds know of an arm', () => {
  const report = (atMs: number): NonNullable<ArmElsewhere['pain']> => ({ atMs, day: '2026-09-20', from: 'glance', said: 'pain', areas: ['elbow'] });
  const told = (more: Partial<ArmElsewhere> = {}): ArmElsewhere => ({ kind: 'arm-elsewhere', athlete: 'ada', session: null, days: [], pain: null, soreness: null, answeredAtMs: null, ...more });

  it('counts in the session that opens after it, and in its recording', () => {
    const story = new Story().hear(told({ pain: report(5), days: [{ day: '2026-09-20', throws: [{ stage: 'mound', effort: 'full', count: 40 }] }] })).open('s1', 'ada');
    expect(sessionOf(story).armCare).toMatchObject({ kind: 'pain-reported', report: { areas: ['elbow'] } });
    const slice = sliceOf(story.facts, 's1')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's1').session!.armCare).toEqual(sessionOf(story).armCare);
  });

  it('asks for rest after a day on another mound', () => {
    const days = [{ day: '2026-09-20', throws: [{ stage: 'mound', effort: 'full', count: 40 } as const] }];
    expect(sessionOf(new Story().hear(told({ days })).open('s1', 'ada')).armCare).toMatchObject({ kind: 'rest-due', until: { day: '2026-09-22' } });
  });

  it('lets pain stand unless it was answered for afterwards, whichever mound heard of either', () => {
    const here = () => new Story().open('s1', 'ada').say(pain('s1'));
    const at = here().facts[1]!.atMs;
    const after = (more: Partial<ArmElsewhere>) => sessionOf(here().hear(told({ session: 's1', ...more }))).armCare.kind;
    expect(after({ answeredAtMs: at - 1 })).toBe('pain-reported');
    expect(after({ answeredAtMs: at + 1 })).toBe('under');
    expect(after({ answeredAtMs: at + 1, pain: report(at + 2) })).toBe('pain-reported');
  });

  it('is nothing that a coach or an athlete could say', () => {
    expect(coachSaysSchema.safeParse(told()).success).toBe(false);
  });
});

describe('feedback in a session', () => {
  it('is after every throw until the coach chooses otherwise', () => {
    expect(sessionOf(new Story().open('s1', 'ada')).feedback).toMatchObject({ mode: { kind: 'every-throw' }, askFirst: false, now: { kind: 'nothing-thrown' } });
  });

  it('outside the band is silent on target and speaks off it; fastballs do not count', () => {
    const story = withChangeups(new Story(), { kind: 'outside-band' }, false);
    const hit = story.throw(82, 8, -10);
    expect(sessionOf(story).feedback.now).toEqual({ kind: 'quiet-good', place: hit });
    const off = story.throw(82, 16, -6);
    expect(sessionOf(story).feedback.now).toEqual({ kind: 'full', place: off, because: 'outside-band' });
    story.intent('s1', 'four-seam').throw(90, 16, -6);
    expect(sessionOf(story).feedback.now).toMatchObject({ place: off });
  });

  it('counts from where the mode was chosen, and leaves an excluded throw out', () => {
    const story = withChangeups(new Story(), { kind: 'every-throw' }, false);
    story.throw(82, 8, -10);
    story.say({ kind: 'feedback-set', session: 's1', mode: { kind: 'summary', after: 3 }, askFirst: false });
    const places = [story.throw(82, 8, -10), story.throw(82, 8, -10)];
    expect(sessionOf(story).feedback.now).toEqual({ kind: 'waits', more: 1 });
    story.say({ kind: 'throws-excluded', session: 's1', places: [places[0]!], reason: 'slipped' });
    expect(sessionOf(story).feedback.now).toEqual({ kind: 'waits', more: 2 });
  });

  it('asks the athlete first, and shows the numbers once that is said', () => {
    const story = withChangeups(new Story(), { kind: 'every-throw' }, true);
    const place = story.throw(82, 8, -10);
    expect(sessionOf(story).feedback.now).toEqual({ kind: 'ask-first', place });
    const guess = { kind: 'throw-guessed', session: 's1', place, went: { height: 'down', side: 'arm-side' }, moved: null } as const;
    expect(objection(story.ledger(), guess)).toBeNull();
    expect(objection(story.ledger(), { ...guess, place: 1 })).toMatchObject({ code: 'not-of-this-session' });
    expect(sessionOf(story.say(guess)).feedback.now).toMatchObject({ kind: 'full', place });
  });
});

describe('comfort', () => {
  it('is what the athlete last said of this trial in this stage, and unknown elsewhere', () => {
    const story = withChangeups(new Story(), { kind: 'every-throw' }, false).say({ kind: 'comfort-said', session: 's1', from: 'glance', comfortable: false }).say({ kind: 'comfort-said', session: 's1', from: 'glance', comfortable: true });
    expect(sessionOf(story).comfort).toMatchObject({ comfortable: true });
    story.say({ kind: 'stage-set', session: 's1', stage: 'hitters', distanceM: 18.4404, effort: 'full' });
    expect(sessionOf(story).comfort).toBeNull();
  });
});

describe('the air of a mound', () => {
  const air = { where: 'outdoors', temperatureC: 31, relativeHumidity: 0.4, height: { kind: 'altitude', altitudeM: 1610 }, wind: null } as const;

  it('holds for the throws after it, whoever throws them, and not for those before', () => {
    const story = new Story().open('s1', 'ada');
    const before = story.throw(90, 16, -6);
    story.say({ kind: 'air-set', air }).open('s2', 'bo');
    const after = story.throw(90, 16, -6);
    expect(moundView(story.ledger(), null).air).toMatchObject({ air });
    expect([before, after].map((place) => throwIn(story.ledger(), place)!.air)).toEqual([null, air]);
    expect(objection(new Story().ledger(), { kind: 'air-set', air })).toBeNull();
  });

  it.each([
    ['temperatureC', { ...air, temperatureC: 88 }],
    ['relativeHumidity', { ...air, relativeHumidity: 40 }],
    ['height', { ...air, height: { kind: 'pressure', pressurePa: 1013 } }],
  ])('with an impossible %s is refused', (field, wrong) => {
    const read = coachSaysSchema.safeParse({ kind: 'air-set', air: wrong });
    expect(read.success ? [] : read.error.issues[0]!.path).toContain(field);
  });
});
