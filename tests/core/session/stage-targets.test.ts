import { describe, expect, it } from 'vitest';
import type { Stage } from '../../../core/facts/vocabulary.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { objection } from '../../../core/session/admit.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const HIGHER = { ...ZONE, verticalM: -0.05 };
const band = { lowMps: -5, highMps: -3 };
const go = (story: Story, session: string, stage: Stage) => story.say({ kind: 'stage-set', session, stage, distanceM: 18.4404, effort: 'firm' });

/** A target on the mound and a changeup on it; then flat ground with fastballs of its own, no target, and the same changeup. */
function twoStages(): Story {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: band, reason: null }).intent('s1', 'changeup').throw(82, 8, -10);
  go(story, 's1', 'flat-ground').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.intent('s1', 'changeup').throw(82, 8, -10);
  return story;
}
const viewOf = (story: Story, id: string | null = null) => moundView(story.ledger(), id);

describe('the target of a stage', () => {
  it('judges the throws of that stage and of no other', () => {
    const view = viewOf(twoStages());
    expect(view.session).toMatchObject({ stage: 'flat-ground', zone: null, speedBand: null });
    expect(view.throws.filter(({ fastball }) => !fastball).map(({ stage, miss }) => [stage, miss?.onTarget ?? null])).toEqual([['mound', true], ['flat-ground', null]]);
  });

  it('stays as it was when another stage gets its own, and is back with its stage', () => {
    const story = twoStages().say({ kind: 'zone-set', session: 's1', zone: HIGHER, speedBand: null, reason: null });
    const misses = viewOf(story).throws.filter(({ fastball }) => !fastball).map(({ miss }) => [miss?.onTarget, miss?.zoneVerticalM]);
    expect(misses).toEqual([[true, -0.2032], [false, -0.05]]);
    expect(viewOf(go(story, 's1', 'mound')).session).toMatchObject({ zone: { verticalM: -0.2032 }, speedBand: band });
  });

  it('comes along to the athlete’s next session, stage by stage, live and played from a slice', () => {
    const story = twoStages().say({ kind: 'zone-set', session: 's1', zone: HIGHER, speedBand: null, reason: null });
    story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada');
    expect(viewOf(story).session).toMatchObject({ stage: 'mound', zone: { verticalM: -0.2032 } });
    go(story, 's2', 'flat-ground');
    const slice = sliceOf(story.facts, 's2')!;
    expect(viewOf(story).session).toMatchObject({ zone: { verticalM: -0.05 }, speedBand: null });
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2').session).toEqual(viewOf(story, 's2').session);
    expect(viewOf(go(story, 's2', 'catch-play')).session?.zone).toBeNull();
  });

  it('can be taken away with a reason: nothing is judged there then, and the gate is comfort alone, in the next session too', () => {
    const away = { kind: 'zone-removed', session: 's1', reason: 'back to feel' } as const;
    const story = go(twoStages(), 's1', 'mound').say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
    story.throw(82, 8, -10);
    const gate = () => viewOf(story).session!.progress.stages.find(({ stage }) => stage === 'mound')!;
    expect([gate().hasZone, gate().work?.state.comfortAlone, gate().work?.judged]).toEqual([true, false, 1]);
    expect(objection(story.ledger(), away)).toBeNull();
    story.say(away);
    expect(viewOf(story).session).toMatchObject({ zone: null, speedBand: null });
    expect([gate().hasZone, gate().work?.state.comfortAlone, gate().work?.judged]).toEqual([false, true, 0]);
    expect(objection(story.ledger(), away)).toMatchObject({ code: 'no-target', path: 'session' });
    story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada');
    expect(viewOf(story).session?.zone).toBeNull();
  });

  it('of one athlete is not another’s', () => {
    const story = twoStages().open('s2', 'bo', 'left');
    expect(viewOf(story).session?.zone).toBeNull();
  });
});
