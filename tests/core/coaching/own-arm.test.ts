import { describe, expect, it } from 'vitest';
import { ownArm } from '../../../core/coaching/own-arm.ts';
import type { BaselineView, ThrowView } from '../../../core/facts/views.ts';
import { separationBySpin } from '../../../core/flight/arm.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { norm } from '../../../core/flight/vector.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, summary } from '../session/story.ts';
import { footM, inchM, mphMps } from '../flight/feet-and-miles.ts';

const AIR = 1.2;
const MOUND_M = 60.5 * footM;

function viewOf(story: Story): { baseline: BaselineView; thrown: ThrowView[] } {
  const { session, throws } = moundView(story.ledger(), null);
  return { baseline: session!.baseline as BaselineView, thrown: throws.filter(({ intent }) => intent === 'changeup') };
}

/** A bullpen on a device that sends a summary; changeups of 80–84 mph. */
function summaries(changeups: number): Story {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.intent('s1', 'changeup');
  for (let index = 0; index < changeups; index += 1) story.measured({ ...summary(80 + index, 8, -10), spin: { rate: 1600 + 40 * index, tilt: 60, efficiency: 0.9 + 0.02 * index } });
  return story;
}

describe('the arm of an athlete', () => {
  it('with fewer than five changeups is taken to throw them as changeups are thrown, and says what was assumed', () => {
    const { arm, assumed } = ownArm({ ...viewOf(summaries(4)), distanceM: MOUND_M, airDensityKgM3: AIR });
    expect(assumed).toEqual(['release', 'direction', 'speed', 'spin', 'efficiency']);
    expect(arm.speedMps.low / mphMps).toBeCloseTo(78, 1);
    expect(arm.spinRpm).toEqual({ low: 1400, high: 2000 });
    expect(arm.airDensityKgM3).toBe(AIR);
  });

  it('with five of its own is taken at them: the middle and two robust spreads either way, efficiency never over one', () => {
    const { arm, assumed } = ownArm({ ...viewOf(summaries(5)), distanceM: MOUND_M, airDensityKgM3: AIR });
    expect(assumed).toEqual(['release', 'direction']);
    expect((arm.speedMps.low + arm.speedMps.high) / 2 / mphMps).toBeCloseTo(82, 2);
    expect((arm.speedMps.high - arm.speedMps.low) / mphMps).toBeCloseTo(4 * 1.80393, 2);
    expect((arm.spinRpm.low + arm.spinRpm.high) / 2).toBeCloseTo(1680, 9);
    expect(arm.efficiency.high).toBe(1);
    expect(arm.efficiency.low).toBeCloseTo(0.94 - 2 * 0.02 * 1.80393, 4);
  });

  it('leaves excluded throws out', () => {
    const story = summaries(5);
    story.say({ kind: 'throws-excluded', session: 's1', places: [story.facts.length], reason: 'misread' });
    expect(ownArm({ ...viewOf(story), distanceM: MOUND_M, airDensityKgM3: AIR }).assumed).toContain('speed');
  });

  it('whose fastball was not seen is taken to throw it from the usual place over the middle: really flown it gets there, but for the break that differs', () => {
    const { arm } = ownArm({ ...viewOf(summaries(0)), distanceM: MOUND_M, airDensityKgM3: AIR });
    expect(arm.releaseM[1] / footM).toBeCloseTo(55, 9);
    const speedMps = 90 * mphMps;
    const velocityMps = [speedMps * arm.direction[0], speedMps * arm.direction[1], speedMps * arm.direction[2]] as const;
    const { start, end } = flyPitch({ positionM: arm.releaseM, velocityMps, spinRadps: spinAxisFromTilt({ tiltRad: 0.4, efficiency: 0.95, spinRpm: 2200, velocityMps }) }, { airDensityKgM3: AIR });
    const moved = inducedBreakBetween(start, end);
    expect(Math.abs(end.positionM[0] - (moved.horizontalM + arm.fastball.armSideM))).toBeLessThan(0.5 * inchM);
    expect(Math.abs(end.positionM[2] - 30 * inchM - (moved.verticalM - arm.fastball.verticalM))).toBeLessThan(0.5 * inchM);
  });

  it('whose fastball was seen throws from there in that direction, a left-hander mirrored', () => {
    const arms = ([['right', -1], ['left', 1]] as const).map(([hand, side]) => {
      const story = new Story().open('s1', 'ada', hand).intent('s1', 'four-seam');
      for (let index = 0; index < 5; index += 1) {
        story.measured({ constant: { start: [side * 0.5, 16.5, 1.8], velocity: [side * -1, -41, -1], acceleration: [side * 2, 8, -5], distance: 16.5 }, extension: MOUND_M - 16.5 });
      }
      return ownArm({ ...viewOf(story), distanceM: MOUND_M, airDensityKgM3: AIR });
    });
    expect(arms[0]).toEqual(arms[1]);
    expect(arms[0]!.assumed).toEqual(['speed', 'spin', 'efficiency']);
    expect(arms[0]!.arm.releaseM).toEqual([-0.5, 16.5, 1.8]);
    expect(norm(arms[0]!.arm.direction)).toBeCloseTo(1, 12);
    const nearly = separationBySpin(arms[0]!.arm, { speedMps: 41, spinRpm: 2300, efficiency: 0.95, tiltRad: 0.5, gyroSign: 1 })!;
    expect(Math.hypot(nearly.verticalM, nearly.armSideM)).toBeLessThan(6 * inchM);
  });
});
