import { describe, expect, test } from 'vitest';
import { ball } from '../../core/flight/ball.ts';
import { flyPitch, type Launch } from '../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../core/flight/movement.ts';
import type { Derivative } from '../../core/flight/runge-kutta.ts';
import { seamCurve } from '../../core/flight/seam-curve.ts';
import { spinExplainedBreak, type ThrownBall } from '../../core/flight/spin-explained.ts';
import { unexplainedMovement, type UnexplainedMovement } from '../../core/flight/unexplained.ts';
import { add, cross, norm, scale, type Vector } from '../../core/flight/vector.ts';
import { degreeRad, inchM } from '../core/flight/feet-and-miles.ts';
import { changeup, launchOf } from '../core/flight/pitches.ts';
import { solveExactly } from '../core/flight/reference-solver.ts';

const air = { airDensityKgM3: 1.2 };
const rpmOf = (spinRadps: Vector): number => (norm(spinRadps) * 30) / Math.PI;
const thrownFrom = ({ positionM, velocityMps, spinRadps }: Launch): ThrownBall => ({
  positionM, velocityMps, plateYM: 17 * inchM, airDensityKgM3: 1.2, dragCoefficient: null, rateRpm: rpmOf(spinRadps), told: 'flight',
});
const heldAgainst = (launch: Launch, spinRadps: Vector, observed: { verticalM: number; horizontalM: number }): UnexplainedMovement => {
  const spin = { kind: 'vector', how: 'measured', rateRpm: rpmOf(spinRadps), spinRadps } as const;
  const answer = unexplainedMovement({ sight: 'full-flight', spin, spinErrors: null, thrown: thrownFrom(launch), observed: { ...observed, covariance: null } });
  if (answer?.kind !== 'unexplained') throw new Error('nothing to be seen');
  return answer;
};

describe('Unexplained movement of a changeup, 85 mph, 1700 rpm, 0.95 at 2:00', () => {
  const launch = launchOf(changeup);
  const spun = spinExplainedBreak(thrownFrom(launch), launch.spinRadps)!;
  const turnedBy = (upIn: number, rightIn: number): number =>
    heldAgainst(launch, launch.spinRadps, { verticalM: spun.verticalM + upIn * inchM, horizontalM: spun.horizontalM + rightIn * inchM }).directionDeviationRad! / degreeRad;

  test('of 4.6 in to the arm side turns the direction by 6°, of 4.6 in downward by 14° (computed independently): the inches are what matters', () => {
    expect(turnedBy(0, -4.6)).toBeCloseTo(6, 0);
    expect(turnedBy(-4.6, 0)).toBeCloseTo(14, 0);
  });

  test('of nothing but an axis that is 3° beside the truth is 0.8 in across for each 15 in of movement (computed independently: 15·sin 3°)', () => {
    const forward = scale(launch.velocityMps, 1 / norm(launch.velocityMps));
    const angle = 3 * degreeRad;
    const along = scale(forward, (1 - Math.cos(angle)) * (forward[0] * launch.spinRadps[0] + forward[1] * launch.spinRadps[1] + forward[2] * launch.spinRadps[2]));
    const turned = add(add(scale(launch.spinRadps, Math.cos(angle)), scale(cross(forward, launch.spinRadps), Math.sin(angle))), along);
    const spinless = spinExplainedBreak(thrownFrom(launch), [0, 0, 0])!;
    const movedM = Math.hypot(spun.verticalM - spinless.verticalM, spun.horizontalM - spinless.horizontalM);
    const { components } = heldAgainst(launch, turned, spun);
    expect((15 * Math.abs(components!.acrossM)) / movedM).toBeCloseTo(15 * Math.sin(angle), 1);
    expect(15 * Math.sin(angle)).toBeCloseTo(0.8, 1);
  });

  test('by 1 m/s of crosswind is 0.85 in at 85 mph and 0.9 in at 80 mph (computed independently: npm odex on equations written out here)', () => {
    for (const [speedMph, movedIn] of [[85, 0.853], [80, 0.902]] as const) {
      const slower = launchOf({ ...changeup, speedMph });
      const [still, windy] = [0, 1].map((windMps) => {
        const { end } = flyPitch(slower, { ...air, windMps: [windMps, 0, 0] });
        const exact = solveExactly(writtenOut(slower.spinRadps, windMps), [...slower.positionM, ...slower.velocityMps], end.timeS);
        expect(Math.abs(exact[0]! - end.positionM[0])).toBeLessThan(1e-7);
        return end.positionM[0];
      });
      expect((windy! - still!) / inchM).toBeCloseTo(movedIn, 2);
    }
  });

  test('by a lateral coefficient of 0.01 is the 0.927 in of ½·K·C·d² within 3 % (computed independently)', () => {
    const pushed = flyPitch(launch, { ...air, seamCoefficient: { x: -0.01 * Math.cos(60 * degreeRad), z: -0.01 * Math.sin(60 * degreeRad) } });
    const { components } = heldAgainst(launch, launch.spinRadps, inducedBreakBetween(pushed.start, pushed.end));
    expect(Math.abs(components!.acrossM / inchM / 0.927 - 1)).toBeLessThan(0.03);
  });
});

/** A. M. Nathan's forces on a ball in a crosswind, written apart from core, with plain numbers. */
function writtenOut([wx, wy, wz]: Vector, crosswindMps: number): Derivative {
  const k = (1.2 * Math.PI * 0.036888137 ** 2) / (2 * 0.145291306);
  const drag = 0.3008 + (0.0292 * Math.hypot(wx, wy, wz) * 60) / (2 * Math.PI * 1000);
  return (_, state, rate) => {
    const [u, v, w] = [state[3]! - crosswindMps, state[4]!, state[5]!];
    const speed = Math.hypot(u, v, w);
    const [mx, my, mz] = [wy * w - wz * v, wz * u - wx * w, wx * v - wy * u];
    const across = Math.hypot(mx, my, mz);
    const s = (0.036888137 * across) / speed ** 2;
    const lift = (k * speed ** 2 * 1.12 * s) / (0.583 + 2.333 * s) / across;
    rate.set([state[3]!, state[4]!, state[5]!, lift * mx - k * drag * speed * u, lift * my - k * drag * speed * v, lift * mz - k * drag * speed * w - 9.80665]);
  };
}

test('the seam curve x = a·cos t + b·cos 3t, y = a·sin t − b·sin 3t, z = 2√(ab)·sin 2t with a = ⅔R, b = ⅓R (quoted by others) lies on the sphere (computed independently), its waist about 1 in', () => {
  for (const point of seamCurve(1000)) expect(norm(point)).toBeCloseTo(1, 14);
  const [x, y] = seamCurve(8)[1]!;
  expect((2 * Math.hypot(x, y) * ball.radiusM) / inchM).toBeCloseTo(0.968, 3);
});
