import { describe, expect, test } from 'vitest';
import { standardGravityMps2 as g } from '../../core/flight/ball.ts';
import { flightTimeFromSpeedS } from '../../core/flight/arrival.ts';
import { aerodynamicConstantPerM } from '../../core/flight/aerodynamics.ts';
import { flyPitch } from '../../core/flight/fly.ts';
import { equationsOfMotion } from '../../core/flight/motion.ts';
import { rungeKutta4 } from '../../core/flight/runge-kutta.ts';
import { dot, norm } from '../../core/flight/vector.ts';
import { changeup, launchOf } from '../core/flight/pitches.ts';
import { footM, inchM, mphMps } from '../core/flight/feet-and-miles.ts';
import { solveExactly } from '../core/flight/reference-solver.ts';

/** Checks with no baseball in them: exact, or computed independently. */
const still = [0, 0, 0] as const;
const lawOf = (drag: number, lift = 0) => ({ dragCoefficient: () => drag, liftCoefficient: () => lift });

describe('A flight without baseball in it', () => {
  test('without air the parabola is exact (exact)', () => {
    const flight = flyPitch({ positionM: [1, 18, 2], velocityMps: [0.5, -30, 4], spinRadps: [-200, 30, 50] }, { airDensityKgM3: 0 });
    const t = 17.5682 / 30;
    expect(flight.end.timeS).toBeCloseTo(t, 12);
    expect(flight.end.positionM[0]).toBeCloseTo(1 + 0.5 * t, 12);
    expect(flight.end.positionM[2]).toBeCloseTo(2 + 4 * t - (g * t * t) / 2, 12);
    expect(flight.positionAt(0.3)[2]).toBeCloseTo(2 + 4 * 0.3 - (g * 0.09) / 2, 12);
  });

  test('a fall from rest with C_D 0.5 in air of 1.2: 17.624604 m/s and 18.576085 m after 2 s (computed independently)', () => {
    const { end } = flyPitch({ positionM: [0, 5, 0], velocityMps: still, spinRadps: still }, { airDensityKgM3: 1.2, law: lawOf(0.5), longestS: 2 });
    expect(end.timeS).toBeCloseTo(2, 12);
    expect(-end.velocityMps[2]).toBeCloseTo(17.624604, 6);
    expect(-end.positionM[2]).toBeCloseTo(18.576085, 6);
  });

  test('thrown up at terminal speed v_t it returns at v_t/√2 (exact)', () => {
    const terminal = Math.sqrt(g / (aerodynamicConstantPerM(1.2) * 0.5));
    const returnS = (terminal / g) * (Math.PI / 4 + Math.asinh(1));
    const { end } = flyPitch({ positionM: [0, 5, 0], velocityMps: [0, 0, terminal], spinRadps: still }, { airDensityKgM3: 1.2, law: lawOf(0.5), longestS: returnS });
    expect(end.positionM[2]).toBeCloseTo(0, 6);
    expect(-end.velocityMps[2]).toBeCloseTo(terminal / Math.SQRT2, 6);
  });

  test('level flight with quadratic drag, C_D 0.35, 1.2, 42.4688 m/s over 16.3322 m: 38.392286 m/s after 0.4046429401 s (computed independently), by the solver and by the closed form', () => {
    const { end } = flyPitch(
      { positionM: [0, 16.3322, 0], velocityMps: [0, -42.4688, 0], spinRadps: still },
      { airDensityKgM3: 1.2, law: lawOf(0.35), gravityMps2: 0, until: { yM: 0 } },
    );
    expect(end.timeS).toBeCloseTo(0.4046429401, 9);
    expect(-end.velocityMps[1]).toBeCloseTo(38.392286, 6);
    expect(flightTimeFromSpeedS(42.4688, 16.3322, 1.2, 0.35)).toBeCloseTo(0.4046429401, 9);
  });

  test('linear drag b = 0.3 from (30, 5) for 0.5 s: 13.9292023575, 1.1547628706 (computed independently)', () => {
    const state = Float64Array.of(0, 0, 30, 5);
    const step = rungeKutta4(4, (_, now, rate) => rate.set([now[2]!, now[3]!, -0.3 * now[2]!, -g - 0.3 * now[3]!]));
    for (let i = 0; i < 100; i += 1) step(i * 0.005, 0.005, state, state);
    expect(state[0]).toBeCloseTo(13.9292023575, 9);
    expect(state[1]).toBeCloseTo(1.1547628706, 9);
  });

  test('the Magnus force does no work (exact)', () => {
    const flight = flyPitch(
      { positionM: [0, 17, 2], velocityMps: [1, -38, 0], spinRadps: [-180, -60, 90] },
      { airDensityKgM3: 1.2, law: { dragCoefficient: () => 0, liftCoefficient: (s) => (1.12 * s) / (0.583 + 2.333 * s) } },
    );
    const energy = (node: typeof flight.end): number => dot(node.velocityMps, node.velocityMps) / 2 + g * node.positionM[2];
    expect(norm([flight.end.positionM[0], 0, flight.end.positionM[2] - 2])).toBeGreaterThan(0.1);
    for (const node of flight.nodes) expect(energy(node) / energy(flight.start)).toBeCloseTo(1, 10);
  });

  test('halving the step divides the error by 14–18, from 4 to 64 steps (exact order; npm odex as the truth)', () => {
    const launch = launchOf(changeup);
    const motion = equationsOfMotion(launch.spinRadps, { airDensityKgM3: 1.2 });
    const start = [...launch.positionM, ...launch.velocityMps];
    const exact = solveExactly(motion, start, 0.45);
    const errorOf = (steps: number): number => {
      const state = Float64Array.from(start);
      const step = rungeKutta4(6, motion);
      for (let i = 0; i < steps; i += 1) step((i * 0.45) / steps, 0.45 / steps, state, state);
      return Math.hypot(state[0]! - exact[0]!, state[1]! - exact[1]!, state[2]! - exact[2]!);
    };
    const errors = [4, 8, 16, 32, 64].map(errorOf);
    const ratios = errors.slice(1).map((error, i) => errors[i]! / error);
    console.log(`Runge–Kutta 4 error ratios ${ratios.map((r) => r.toFixed(2)).join(' ')}; error with 4 steps ${errors[0]!.toExponential(1)} m, with 64 ${errors[4]!.toExponential(1)} m`);
    for (const ratio of ratios) {
      expect(ratio).toBeGreaterThan(14);
      expect(ratio).toBeLessThan(18);
    }
  });

  test('a lateral coefficient of 0.01 moves a ball 0.927 in over 53.583 ft at any speed (computed independently)', () => {
    for (const speedMph of [60, 80, 100]) {
      const { end } = flyPitch(
        { positionM: [0, 53.583 * footM, 2], velocityMps: [0, -speedMph * mphMps, 0], spinRadps: still },
        { airDensityKgM3: 1.2, law: lawOf(0), gravityMps2: 0, seamCoefficient: { x: -0.01, z: 0 }, until: { yM: 0 } },
      );
      expect(-end.positionM[0] / inchM).toBeCloseTo(0.927, 2);
    }
  });

  test('a 90 mph pitch takes 427.7 ms from 55 ft, and one more mph saves 5.94, 4.70 and 3.81 ms at 80, 90 and 100 (computed independently)', () => {
    const distanceM = 55 * footM - 0.4318;
    const ms = (mph: number): number => 1000 * flightTimeFromSpeedS(mph * mphMps, distanceM, 1.2);
    expect(Math.abs(ms(90) - 427.7)).toBeLessThan(0.1);
    expect(ms(80) - ms(81)).toBeCloseTo(5.94, 2);
    expect(ms(90) - ms(91)).toBeCloseTo(4.7, 2);
    expect(ms(100) - ms(101)).toBeCloseTo(3.81, 2);
  });

  test('the closed form without air is distance over speed', () => {
    expect(flightTimeFromSpeedS(40, 16, 0)).toBe(0.4);
  });
});
