import { describe, expect, it } from 'vitest';
import type { CoachSays } from '../../../core/facts/coach.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const begun = (session: string, words: string): CoachSays => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
const feedback = (session: string, kind: 'none' | 'every-throw'): CoachSays => ({ kind: 'feedback-set', session, mode: { kind }, askFirst: false });
const sessionOf = (story: Story, id: string | null = null) => moundView(story.ledger(), id).session!;
const setOf = (story: Story) => sessionOf(story).nextDaySet;
const times = (count: number, once: (n: number) => void) => Array.from({ length: count }, (_, n) => once(n));
const onTarget = (story: Story, count: number) => times(count, () => story.throw(82, 8, -10));
const offTarget = (story: Story, count: number) => times(count, (n) => story.throw(84, 14 + (n % 3) / 2, -6));

/** Two trials on the mound in blocks of five: B on target, A far off. */
function practised(): Story {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null });
  offTarget(story.say(begun('s1', 'through')), 5);
  onTarget(story.say(begun('s1', 'over')), 5);
  offTarget(story.say({ kind: 'trial-resumed', session: 's1', trial: 'A' }), 5);
  times(5, (n) => story.say(n === 0 ? { kind: 'trial-resumed', session: 's1', trial: 'B' } : { kind: 'intent-set', session: 's1', intent: 'changeup' }).throw(82, 8 + n / 4, -10));
  return story;
}
const compared = (story: Story) => story.say({ kind: 'comparison-opened', session: 's1', k: 1, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline: 1 });
function reopened(story: Story, hours: number): Story {
  story.say({ kind: 'session-closed', session: 's1' }).later(hours).open('s2', 'ada').intent('s2', 'four-seam');
  fiveFastballs(story);
  return story;
}
const found = () => reopened(compared(practised()), 24);

describe('a set without feedback', () => {
  it('is offered a day later for the cue that was found better, with what was seen then', () => {
    expect(setOf(found())).toMatchObject({
      kind: 'offered', because: 'found-better', throws: 10, resume: null, trial: { intent: 'changeup', cue: { words: 'over' } }, before: { letter: 'B', hits: 10, judged: 10 },
    });
  });

  it('is offered the other way round too: where B was worse, A is what to ask again', () => {
    const story = practised().say({ kind: 'comparison-opened', session: 's1', k: 1, stage: 'mound', zone: ZONE, a: 'B', b: 'A', baseline: 1 });
    expect(setOf(reopened(story, 24))).toMatchObject({ because: 'found-better', before: { letter: 'B' } });
  });

  it('is offered for a gate that is near, though nothing was compared', () => {
    expect(setOf(reopened(practised(), 24))).toMatchObject({ because: 'gate-near', before: { letter: 'B' } });
  });

  describe('for a cue that only several days together find better', () => {
    const A = [14, 11, 15, 10.5, 13.5];
    const B = [9.5, 7, 11, 6.5, 9];
    /** One block of each in a session of its own; only the second looks at both days. */
    const day = (story: Story, session: string) => {
      story.open(session, 'ada').intent(session, 'four-seam');
      fiveFastballs(story);
      story.say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null }).say({ kind: 'gate-set', session, stage: 'mound', gate: { comfort: true, shareAbove: 0.95 } });
      for (const [words, ups] of [['through', A], ['over', B]] as const) {
        story.say(begun(session, words));
        for (const up of ups) story.throw(82, up, -10);
      }
      return story;
    };
    const opened = (session: string, baseline: number): CoachSays => ({ kind: 'comparison-opened', session, k: 1, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline });
    const continued = (session: string, on: string, baseline: number): CoachSays => ({ kind: 'comparison-continued', session, k: 1, day: { session: on, a: 'A', b: 'B', baseline } });
    const next = (story: Story) => setOf(story.say({ kind: 'session-closed', session: 's3' }).later(24).open('s4', 'ada'));
    const threeDays = (): Story => {
      const story = day(new Story(), 's1').say({ kind: 'session-closed', session: 's1' }).later(48);
      day(story, 's2').say({ kind: 'session-closed', session: 's2' }).later(48);
      return day(story, 's3');
    };

    it('is offered when they were compared before the last of them closed, and not for one day alone', () => {
      const alone = threeDays().say(opened('s3', 3));
      expect(next(alone)).toBeNull();
      const together = threeDays().say(opened('s3', 3)).say(continued('s3', 's1', 1)).say(continued('s3', 's2', 2));
      expect(next(together)).toMatchObject({ kind: 'offered', because: 'found-better', trial: { cue: { words: 'over' } } });
    });

    it('is offered when they were compared after all had closed, live and played from a slice', () => {
      const story = threeDays().say({ kind: 'session-closed', session: 's3' }).say(opened('s1', 1)).say(continued('s1', 's2', 2)).say(continued('s1', 's3', 3));
      story.later(24).open('s4', 'ada');
      expect(setOf(story)).toMatchObject({ because: 'found-better', before: { letter: 'B' } });
      const slice = sliceOf(story.facts, 's4')!;
      expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's4').session).toEqual(sessionOf(story, 's4'));
    });
  });

  it('is not offered within 24 hours, after pain, nor when the day has no five throws left', () => {
    expect(setOf(reopened(compared(practised()), 20))).toBeNull();
    expect(setOf(found().say({ kind: 'arm-reported', session: 's2', from: 'glance', said: 'pain', areas: ['elbow'] }))).toBeNull();
    expect(setOf(found().say({ kind: 'count-planned', session: 's2', throws: 9, dayMost: null }))).toBeNull();
    expect(setOf(found().say({ kind: 'count-planned', session: 's2', throws: 12, dayMost: null }))).toMatchObject({ throws: 7 });
  });

  it('is not offered in another stage', () => {
    expect(setOf(found().say({ kind: 'stage-set', session: 's2', stage: 'hitters', distanceM: 18.4, effort: 'full' }))).toBeNull();
  });

  it('is told as it goes, beside what practice had shown', () => {
    const story = found().say(feedback('s2', 'none')).say(begun('s2', 'over'));
    expect(setOf(story)).toMatchObject({ kind: 'thrown', letter: 'A', throws: 0 });
    onTarget(story, 4);
    offTarget(story, 3);
    expect(setOf(story)).toMatchObject({ kind: 'thrown', letter: 'A', throws: 7, hits: 4, judged: 7, before: { letter: 'B', hits: 10, judged: 10 } });
    story.say(feedback('s2', 'every-throw'));
    expect(setOf(story)).toMatchObject({ kind: 'thrown', throws: 7 });
  });

  it('is none once a throw of it had feedback: then it is practice again', () => {
    const story = found().say(begun('s2', 'over'));
    onTarget(story, 1);
    expect(setOf(story)).toBeNull();
    onTarget(story.say(feedback('s2', 'none')), 5);
    expect(setOf(story)).toBeNull();
  });

  it('is not asked for again when it has been thrown, until something is found anew', () => {
    const story = found().say(feedback('s2', 'none')).say(begun('s2', 'over'));
    onTarget(story, 6);
    story.say({ kind: 'session-closed', session: 's2' }).later(30).open('s3', 'ada');
    expect(setOf(story)).toBeNull();
  });

  it('goes on with the trial where it was begun already', () => {
    expect(setOf(found().say(begun('s2', 'through')).say(begun('s2', 'over')))).toMatchObject({ kind: 'offered', resume: 'B' });
  });

  it('is the same played from a slice as live', () => {
    const story = found();
    const slice = sliceOf(story.facts, 's2')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2').session).toEqual(sessionOf(story, 's2'));
  });
});
