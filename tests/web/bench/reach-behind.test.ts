import { describe, expect, test } from 'vitest';
import { within } from '../../../core/coaching/polygon.ts';
import { mToInches } from '../../../core/units/convert.ts';
import { reachBehind } from '../../../web/bench/target/reach-behind.ts';
import { formingMound, LEFT_HANDER, liveMound, RIGHT_HANDER } from '../invented-mound.ts';

const SESSION = `${RIGHT_HANDER.id}-today`;

describe('what spin alone can reach behind the target on Bench', () => {
  const view = liveMound().view();
  const { region } = reachBehind(view, view.session!)!;

  test("goes round the place of no lift, which lies below the fastball by the fastball's own rise", () => {
    // The fastball rises 16.15 in and runs 7.45 in to the arm side: without spin the ball would be that far below it and to its glove side.
    const noLift = { verticalM: -0.41, armSideM: -0.19 };
    expect(within(noLift, region.outline)).toBe(true);
    const farthestIn = mToInches(Math.max(...region.outline.map(({ verticalM, armSideM }) => Math.hypot(verticalM - noLift.verticalM, armSideM - noLift.armSideM))));
    expect(farthestIn).toBeGreaterThan(8);
    expect(farthestIn).toBeLessThan(30);
  });

  test('is the same for a left-hander who throws the same, arm side for arm side', () => {
    const left = liveMound(LEFT_HANDER).view();
    const mirrored = reachBehind(left, left.session!)!.region;
    region.outline.forEach(({ verticalM, armSideM }, index) => {
      expect(mirrored.outline[index]!.verticalM).toBeCloseTo(verticalM, 3);
      expect(mirrored.outline[index]!.armSideM).toBeCloseTo(armSideM, 3);
    });
  });

  test('says what of the arm was assumed: a device that sends summaries has shown no path', () => {
    expect(reachBehind(view, view.session!)!.assumed).toContain('direction');
  });

  test('is not drawn before there is a fastball to measure from, nor for a pitch that is no changeup', () => {
    const forming = formingMound().view();
    expect(reachBehind(forming, forming.session!)).toBeNull();
    const curve = liveMound().say({ kind: 'trial-begun', session: SESSION, intent: 'curve', grip: null, cue: null }).view();
    expect(reachBehind(curve, curve.session!)).toBeNull();
  });
});
