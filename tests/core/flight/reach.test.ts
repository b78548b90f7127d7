import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { separationBySpin, type Arm, type ArmThrow, type Separation } from '../../../core/flight/arm.ts';
import { flyPitch, type Flight } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { reachRegion } from '../../../core/flight/reach.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { norm, scale, type Vector } from '../../../core/flight/vector.ts';
import { inchM, mphMps } from './feet-and-miles.ts';
import { anyAimedArm, anyArm, anyShare, depthInside, knownArm, thrownBy } from './arms.ts';

/** The corners of the line are exact; between them it cuts the arc by this much at most. */
const toleranceM = 0.002;

/** How far a separation is from the break that was flown. */
function offBy({ verticalM, armSideM }: Separation, { fastball }: Arm, moved: { readonly verticalM: number; readonly horizontalM: number }): number {
  return Math.hypot(verticalM + fastball.verticalM - moved.verticalM, armSideM + fastball.armSideM + moved.horizontalM);
}

/** The flight at the shipped step, aimed again and again until it gets there. */
function reallyAimed(arm: Arm, thrown: ArmThrow): Flight {
  const air = { airDensityKgM3: arm.airDensityKgM3 };
  const fly = (direction: Vector): Flight => {
    const velocityMps = scale(direction, thrown.speedMps / norm(direction));
    return flyPitch({ positionM: arm.releaseM, velocityMps, spinRadps: spinAxisFromTilt({ ...thrown, velocityMps }) }, air);
  };
  let flight = fly(arm.direction);
  for (let round = 0; round < 20; round += 1) {
    const { positionM: [x, , z], timeS } = flight.end;
    const [vx, vy, vz] = flight.start.velocityMps;
    flight = fly([vx + (arm.aim!.xM - x) / timeS, vy, vz + (arm.aim!.zM - z) / timeS]);
  }
  return flight;
}

describe('A throw of an arm', () => {
  test('is separated as its flight at the shipped step says, to 5 µm', () => {
    let worstM = 0;
    fc.assert(
      fc.property(anyArm, anyShare, (arm, share) => {
        const thrown = thrownBy(arm, share);
        const velocityMps = scale(arm.direction, thrown.speedMps / norm(arm.direction));
        const { start, end } = flyPitch({ positionM: arm.releaseM, velocityMps, spinRadps: spinAxisFromTilt({ ...thrown, velocityMps }) }, { airDensityKgM3: arm.airDensityKgM3 });
        const moved = inducedBreakBetween(start, end);
        const offM = offBy(separationBySpin(arm, thrown)!, arm, moved);
        worstM = Math.max(worstM, offM);
        expect(offM).toBeLessThan(5e-6);
      }),
      { seed: 21, numRuns: 300 },
    );
    console.log(`coarse flights of the reach region: at most ${(1e6 * worstM).toFixed(2)} µm from the shipped step`);
  });

  test('aimed at a place is separated as the flight is that really gets there: to a tenth of an inch for any arm, to a hundredth for one whose fastball is known', () => {
    const worstIn = (arms: fc.Arbitrary<Arm>): number => {
      let worstM = 0;
      fc.assert(
        fc.property(arms, anyShare, (arm, share) => {
          const { start, end } = reallyAimed(arm, thrownBy(arm, share));
          expect(Math.hypot(end.positionM[0] - arm.aim!.xM, end.positionM[2] - arm.aim!.zM)).toBeLessThan(1e-6);
          worstM = Math.max(worstM, offBy(separationBySpin(arm, thrownBy(arm, share))!, arm, inducedBreakBetween(start, end)));
        }),
        { seed: 23, numRuns: 300 },
      );
      return worstM / inchM;
    };
    const [any, known] = [worstIn(anyAimedArm), worstIn(fc.constant(knownArm()))];
    console.log(`aimed by one correction: at most ${any.toFixed(3)} in from the flight that gets there, ${known.toFixed(4)} in for a known fastball`);
    expect(any).toBeLessThan(0.1);
    expect(known).toBeLessThan(0.01);
  });
});

describe('The region that an arm can reach by spin alone', () => {
  test('holds every throw inside the arm’s spans, to 2 mm, and none lies in its hole', () => {
    let leastM = Number.POSITIVE_INFINITY;
    fc.assert(
      fc.property(fc.oneof(anyArm, anyAimedArm), fc.array(anyShare, { minLength: 20, maxLength: 20 }), (arm, shares) => {
        const { outline, hole } = reachRegion(arm)!;
        for (const share of shares) {
          const at = separationBySpin(arm, thrownBy(arm, share))!;
          leastM = Math.min(leastM, depthInside(at, outline), hole === null ? Number.POSITIVE_INFINITY : -depthInside(at, hole));
        }
        expect(leastM).toBeGreaterThan(-toleranceM);
      }),
      { seed: 22, numRuns: 100 },
    );
    console.log(`reach region: the farthest throw lies ${(-1000 * leastM).toFixed(2)} mm outside`);
  });

  test('is no larger than the throws that fill it: every corner is a throw, and every way round the clock gets near the line', () => {
    const arm = knownArm();
    const { outline, hole } = reachRegion(arm)!;
    const most = { speed: 0, spin: 1, efficiency: 1, gyroSign: 1 } as const;
    const least = { speed: 1, spin: 0, efficiency: 0 } as const;
    for (let minute = 0; minute < 720; minute += 7) {
      const tiltRad = (minute / 720) * 2 * Math.PI;
      const reached = [0, 1].map((speed) => depthInside(separationBySpin(arm, thrownBy(arm, { ...most, speed, tiltRad }))!, outline));
      expect(Math.min(...reached.map(Math.abs))).toBeLessThan(0.3 * inchM);
      const spared = [0, 1].flatMap((speed) => ([1, -1] as const).map((gyroSign) => depthInside(separationBySpin(arm, thrownBy(arm, { ...least, speed, gyroSign, tiltRad }))!, hole!)));
      expect(Math.min(...spared.map(Math.abs))).toBeLessThan(0.3 * inchM);
    }
  });

  test('has no hole for an arm that can throw a ball that spins like a bullet', () => {
    expect(reachRegion({ ...knownArm(), efficiency: { low: 0, high: 1 } })!.hole).toBeNull();
    expect(reachRegion(knownArm())!.hole).toHaveLength(64);
  });

  test('grows with spin and in thick air, and shrinks with speed', () => {
    const arm = knownArm();
    const widest = (one: Arm): number => Math.max(...reachRegion(one)!.outline.map(({ armSideM }) => armSideM));
    expect(widest({ ...arm, spinRpm: { low: 1400, high: 2300 } })).toBeGreaterThan(widest(arm) + inchM);
    expect(widest({ ...arm, airDensityKgM3: 0.98 })).toBeLessThan(widest(arm) - inchM);
    expect(widest({ ...arm, speedMps: { low: arm.speedMps.high, high: arm.speedMps.high } })).toBeLessThan(widest(arm));
  });

  test('of an arm that throws straight is the same to both sides, about its own fastball without side', () => {
    const arm: Arm = { ...knownArm(), releaseM: [0, 16.764, 1.8], direction: [0, -1, -0.01], aim: { xM: 0, zM: 0.7 }, fastball: { verticalM: 0.4, armSideM: 0 } };
    const { outline, hole } = reachRegion(arm)!;
    for (const line of [outline, hole!]) {
      line.forEach((point, corner) => {
        const other: Separation = line[line.length - 1 - corner]!;
        expect(other.verticalM).toBeCloseTo(point.verticalM, 12);
        expect(other.armSideM).toBeCloseTo(-point.armSideM, 12);
      });
    }
  });

  test('is not there for a ball that does not get to the plate', () => {
    expect(reachRegion({ ...knownArm(), speedMps: { low: 1, high: 2 }, direction: [0, 1, 0] })).toBeNull();
  });
});

describe('An arm of which only the fastball is known', () => {
  test('is taken to throw its changeup 6 to 12 mph slower, from the same hand in the same direction', () => {
    const { speedMps, releaseM, direction } = knownArm();
    expect(speedMps.low / mphMps).toBeCloseTo(83, 9);
    expect(speedMps.high / mphMps).toBeCloseTo(89, 9);
    expect(releaseM[1]).toBeCloseTo(16.764, 9);
    expect(norm(direction)).toBeCloseTo(1, 12);
  });
});
