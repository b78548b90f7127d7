import { describe, expect, it } from 'vitest';
import { DEFAULT_GATE, gateState, stageAdvice, type StageWork } from '../../../core/coaching/progression.ts';
import { anytimeShareLowerBound } from '../../../core/statistics/share-lower-bound.ts';
import { armAfter } from './arm-states.ts';

const work = (hits: number, judged: number, more: Partial<StageWork> = {}): StageWork => ({
  stage: 'mound', gate: DEFAULT_GATE, hasZone: true, comfortable: true, hits, judged, shareLowerBound: anytimeShareLowerBound(hits, judged, 0.05), ...more,
});

describe('the gate of a stage', () => {
  it('is met by comfort and by an on-target share that is over a half at every look', () => {
    expect(gateState(work(10, 10))).toEqual({ kind: 'met', needs: [], comfortAlone: false });
  });

  it('is not met by 8 of 10, which a coach might have hoped for', () => {
    expect(gateState(work(8, 10))).toMatchObject({ kind: 'open', needs: [{ code: 'share-not-shown', above: 0.5, hits: 8, judged: 10 }] });
  });

  it('needs the athlete’s own word, and asks for it', () => {
    expect(gateState(work(10, 10, { comfortable: null })).needs).toEqual([{ code: 'ask-comfort' }]);
    expect(gateState(work(10, 10, { comfortable: false })).needs).toEqual([{ code: 'not-comfortable' }]);
  });

  it('without a zone is comfort alone, and says so', () => {
    expect(gateState(work(0, 0, { stage: 'catch-play', hasZone: false }))).toEqual({ kind: 'met', needs: [], comfortAlone: true });
  });

  it('can be set: another share, no comfort asked, or comfort alone', () => {
    expect(gateState(work(10, 10, { gate: { comfort: true, shareAbove: 0.9 } })).kind).toBe('open');
    expect(gateState(work(10, 10, { gate: { comfort: false, shareAbove: 0.5 }, comfortable: null })).kind).toBe('met');
    expect(gateState(work(0, 10, { gate: { comfort: true, shareAbove: null } }))).toMatchObject({ kind: 'met', comfortAlone: true });
  });

  it('that asks for no share never opens without the athlete’s word', () => {
    expect(gateState(work(0, 0, { hasZone: false, gate: { comfort: false, shareAbove: 0.5 }, comfortable: null })).needs).toEqual([{ code: 'ask-comfort' }]);
  });
});

describe('where to work next', () => {
  const fresh = armAfter(10);

  it('leads from catch play over long toss and flat ground to the mound and to hitters', () => {
    const stages = (['catch-play', 'long-toss', 'flat-ground', 'mound'] as const).map((stage) => stageAdvice(fresh, work(10, 10, { stage })));
    expect(stages.map((advice) => advice.kind === 'go-on' && advice.to)).toEqual(['long-toss', 'flat-ground', 'mound', 'hitters']);
    expect(stageAdvice(fresh, work(10, 10, { stage: 'hitters' })).kind).toBe('last-stage');
  });

  it('leads back when the grip is not comfortable, and from catch play nowhere', () => {
    expect(stageAdvice(fresh, work(10, 10, { comfortable: false }))).toMatchObject({ kind: 'go-back', to: 'flat-ground' });
    expect(stageAdvice(fresh, work(0, 0, { stage: 'catch-play', hasZone: false, comfortable: false })).kind).toBe('stay');
  });

  it('stays while the share is not shown', () => {
    expect(stageAdvice(fresh, work(8, 10))).toMatchObject({ kind: 'stay', stage: 'mound' });
  });

  it('is nowhere after pain or at the day’s most', () => {
    expect(stageAdvice(armAfter(10, { pain: true }), work(10, 10))).toEqual({ kind: 'no-advice', because: 'pain-reported' });
    expect(stageAdvice(armAfter(95), work(10, 10))).toEqual({ kind: 'no-advice', because: 'reached' });
  });
});
