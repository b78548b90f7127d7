import { describe, expect, it } from 'vitest';
import type { CoachSays } from '../../../core/facts/coach.ts';
import type { Stage } from '../../../core/facts/vocabulary.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const begun = (session: string, words = 'through'): CoachSays => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
const go = (story: Story, session: string, stage: Stage) => story.say({ kind: 'stage-set', session, stage, distanceM: 18.4404, effort: 'firm' });
const comfort = (session: string, comfortable: boolean): CoachSays => ({ kind: 'comfort-said', session, from: 'glance', comfortable });
const hit = (story: Story, count: number) => Array.from({ length: count }, () => story.throw(82, 8, -10));
const progressOf = (story: Story, id: string | null = null) => moundView(story.ledger(), id).session!.progress;
const at = (story: Story, stage: Stage) => progressOf(story).stages.find((one) => one.stage === stage)!;

/** Catch play that is comfortable and passed, then a target on the mound and so many changeups on it. */
function firstDay(): Story {
  const story = new Story().open('s1', 'ada');
  go(story, 's1', 'catch-play').say(begun('s1')).say(comfort('s1', true)).say({ kind: 'gate-passed', session: 's1', stage: 'catch-play', trial: 'A', reason: null });
  go(story, 's1', 'mound').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null }).say({ kind: 'trial-resumed', session: 's1', trial: 'A' });
  hit(story, 6);
  story.throw(88, 15, -6);
  return story;
}
function nextDay(): Story {
  const story = firstDay().say({ kind: 'session-closed', session: 's1' }).later(24).open('s2', 'ada').intent('s2', 'four-seam');
  fiveFastballs(story);
  hit(story.say(begun('s2')), 5);
  return story;
}

describe('the way through the stages', () => {
  it('shows every stage in its order, each with its gate and whether it has a zone', () => {
    expect(progressOf(firstDay()).stages.map(({ stage, hasZone }) => [stage, hasZone])).toEqual([
      ['catch-play', false], ['long-toss', false], ['flat-ground', false], ['mound', true], ['hitters', false],
    ]);
  });

  it('is met by comfort alone where a stage has no zone, and says so', () => {
    expect(at(firstDay(), 'catch-play').work).toMatchObject({ state: { kind: 'met', comfortAlone: true }, comfort: { comfortable: true } });
    expect(at(firstDay(), 'long-toss').work).toMatchObject({ state: { kind: 'open', comfortAlone: true, needs: [{ code: 'ask-comfort' }] } });
  });

  it('gathers throws of the same trial over days, each day shown, and says what is missing', () => {
    const { work } = at(nextDay(), 'mound');
    expect(work!.days.map(({ throws, hits, judged }) => [throws, hits, judged])).toEqual([[7, 6, 7], [5, 5, 5]]);
    expect(work).toMatchObject({ hits: 11, judged: 12, state: { needs: [{ code: 'ask-comfort' }] } });
    expect(work!.shareLowerBound).toBeGreaterThan(0.5);
  });

  it('keeps comfort and passing with the trial over days, and out of other trials', () => {
    const story = nextDay();
    expect(at(story, 'catch-play')).toMatchObject({ work: { comfort: { comfortable: true } }, passed: [{ trial: 'A' }] });
    story.say(begun('s2', 'over'));
    expect(at(story, 'catch-play')).toMatchObject({ work: { comfort: null, hits: 0, days: [] }, passed: [] });
  });

  it('lets a later word of the athlete replace an earlier one', () => {
    const story = go(nextDay(), 's2', 'catch-play').say(comfort('s2', false));
    expect(at(story, 'catch-play').work).toMatchObject({ state: { kind: 'open', needs: [{ code: 'not-comfortable' }] } });
  });

  it('judges catch play by its share too once the coach has set a zone there', () => {
    const story = go(nextDay(), 's2', 'catch-play').say({ kind: 'zone-set', session: 's2', zone: ZONE, speedBand: null, reason: null });
    expect(at(story, 'catch-play').work).toMatchObject({ state: { comfortAlone: false, needs: [{ code: 'share-not-shown', judged: 0 }] } });
  });

  it('has nothing to tell of a trial before one is worked on', () => {
    expect(progressOf(new Story().open('s1', 'ada'))).toMatchObject({ advice: null, stages: [{ work: null }, { work: null }, { work: null }, { work: null }, { work: null }] });
  });

  it('is the same played from a slice as live', () => {
    const story = nextDay();
    const slice = sliceOf(story.facts, 's2')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2').session!.progress).toEqual(progressOf(story, 's2'));
  });
});
