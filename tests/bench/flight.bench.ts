import { expect, test } from 'vitest';
import { aerodynamicConstantPerM, defaultLaw } from '../../core/flight/aerodynamics.ts';
import { ball, standardGravityMps2 } from '../../core/flight/ball.ts';
import { flyPitch, type Launch } from '../../core/flight/fly.ts';
import { equationsOfMotion } from '../../core/flight/motion.ts';
import { fitPath } from '../../core/flight/path-fit.ts';
import { samplesOf } from '../core/flight/seen.ts';
import { changeup, fastball, launchOf, tailingFastball } from '../core/flight/pitches.ts';
import { solveExactly } from '../core/flight/reference-solver.ts';
import { gapBetween } from '../../core/coaching/gap.ts';
import { analyseThrow } from '../../core/session/analyse.ts';
import { bodyOf, UNITS } from '../core/session/flown-body.ts';
import { report } from './measure.ts';

// Ratios rather than times: they say the same on a slow machine and on a fast one. The two sides take turns, so that whatever else runs slows both.
const air = { airDensityKgM3: 1.2 };
const launches = [fastball, tailingFastball, changeup].map(launchOf);
const ROUNDS = 200;
const WARM_UP = 4;

interface Side {
  readonly name: string;
  /** Calls in a turn: enough for the clock. */
  readonly many: number;
  readonly work: (index: number) => unknown;
}

/** How many times as much a call of one side costs as a call of the other, by their medians, once the engine has settled on its code for both. */
function timesAsMuch(one: Side, other: Side): number {
  for (let turn = 0; turn < WARM_UP; turn += 1) takeTurns(one, other);
  const ratio = takeTurns(one, other);
  report(`${one.name}: ${ratio.oneUs.toFixed(2)} µs, ${other.name}: ${ratio.otherUs.toFixed(2)} µs, ratio ${(ratio.oneUs / ratio.otherUs).toFixed(2)}`);
  return ratio.oneUs / ratio.otherUs;
}

function takeTurns(one: Side, other: Side): { oneUs: number; otherUs: number } {
  const [tookUs, otherUs] = [[] as number[], [] as number[]];
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [{ many, work }, into] of [[one, tookUs], [other, otherUs]] as const) {
      const startedMs = performance.now();
      for (let i = 0; i < many; i += 1) work(i);
      into.push((1000 * (performance.now() - startedMs)) / many);
    }
  }
  return { oneUs: medianOf(tookUs), otherUs: medianOf(otherUs) };
}

const medianOf = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;
const aFlight: Side = { name: 'a flight', many: 60, work: (i) => flyPitch(oneOf(launches, i), air) };

const oneOf = <T>(things: readonly T[], index: number): T => things[index % things.length]!;

/** The classical Runge–Kutta step written out once more, over the same forces, for a number of steps and nothing else: no plane, no rows, no reading in between. */
function bareFlight({ positionM, velocityMps, spinRadps: [wx, wy, wz] }: Launch, steps: number, stepS: number): Float64Array {
  const k = aerodynamicConstantPerM(air.airDensityKgM3);
  const radiusM = ball.radiusM;
  const drag = k * defaultLaw.dragCoefficient((Math.hypot(wx, wy, wz) * 30) / Math.PI);
  const rateOf = (state: Float64Array, rate: Float64Array): void => {
    const [vx, vy, vz] = [state[3]!, state[4]!, state[5]!];
    const speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const mx = wy * vz - wz * vy;
    const my = wz * vx - wx * vz;
    const mz = wx * vy - wy * vx;
    const across = Math.sqrt(mx * mx + my * my + mz * mz);
    const lift = (k * defaultLaw.liftCoefficient((radiusM * across) / (speed * speed)) * speed * speed) / across;
    rate[0] = vx;
    rate[1] = vy;
    rate[2] = vz;
    rate[3] = lift * mx - drag * speed * vx;
    rate[4] = lift * my - drag * speed * vy;
    rate[5] = lift * mz - drag * speed * vz - standardGravityMps2;
  };
  const state = Float64Array.of(...positionM, ...velocityMps);
  const [k1, k2, k3, k4, probe] = [new Float64Array(6), new Float64Array(6), new Float64Array(6), new Float64Array(6), new Float64Array(6)] as const;
  for (let step = 0; step < steps; step += 1) {
    rateOf(state, k1);
    for (let i = 0; i < 6; i += 1) probe[i] = state[i]! + (stepS / 2) * k1[i]!;
    rateOf(probe, k2);
    for (let i = 0; i < 6; i += 1) probe[i] = state[i]! + (stepS / 2) * k2[i]!;
    rateOf(probe, k3);
    for (let i = 0; i < 6; i += 1) probe[i] = state[i]! + stepS * k3[i]!;
    rateOf(probe, k4);
    for (let i = 0; i < 6; i += 1) state[i] = state[i]! + (stepS / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
  }
  return state;
}

/** Runge–Kutta steps of a flight: one for each node after the first, and the rounds that end the last one on the plane. */
const stepsOf = (launch: Launch): number => flyPitch(launch, air).nodes.length - 1;

test('a flight costs at most 1.5 times the bare Runge–Kutta loop of as many steps', () => {
  const bare = launches.map((launch) => ({ launch, steps: stepsOf(launch), stepS: flyPitch(launch, air).end.timeS / stepsOf(launch) }));
  for (const { launch, steps, stepS } of bare) {
    const there = flyPitch(launch, air).end.positionM;
    bareFlight(launch, steps, stepS).slice(0, 3).forEach((value, i) => expect(Math.abs(value - there[i]!)).toBeLessThan(1e-7));
  }
  const bareLoop: Side = {
    name: `the bare loop of ${bare.map(({ steps }) => steps).join('/')} steps`,
    many: 60,
    work: (i) => { const { launch, steps, stepS } = oneOf(bare, i); return bareFlight(launch, steps, stepS); },
  };
  expect(timesAsMuch(aFlight, bareLoop)).toBeLessThan(1.5);
});

test('a path fitted from 100 samples, with all its errors, costs at most 50 flights', () => {
  const paths = launches.flatMap((launch) => [1, 2, 3, 4].map((seed) => samplesOf(flyPitch(launch, air), { noiseM: 0.004, seed })));
  for (const path of paths) expect(fitPath(path, air).kind).toBe('path');
  const aFit: Side = { name: 'a fit', many: paths.length, work: (i) => fitPath(oneOf(paths, i), air) };
  expect(timesAsMuch(aFit, aFlight)).toBeLessThan(50);
});

test('a flight is at least 5 times faster than npm odex as accurate at the plate, which is even told when the ball arrives', () => {
  const cases = launches.map((launch) => {
    const motion = equationsOfMotion(launch.spinRadps, air);
    const start = [...launch.positionM, ...launch.velocityMps];
    const { end } = flyPitch(launch, air);
    const exact = solveExactly(motion, start, end.timeS);
    const missM = (at: readonly number[]): number => Math.hypot(at[0]! - exact[0]!, at[1]! - exact[1]!, at[2]! - exact[2]!);
    const byOdex = (tolerance: number): number[] => solveExactly(motion, start, end.timeS, tolerance);
    return { launch, flownMissM: missM(end.positionM), byOdex, odexMissM: (tolerance: number) => missM(byOdex(tolerance)) };
  });
  const worst = (misses: readonly number[]): number => Math.max(...misses);
  const flownMissM = worst(cases.map((one) => one.flownMissM));
  const tolerance = Array.from({ length: 17 }, (_, i) => 10 ** (-4 - i / 2)).find((tried) => worst(cases.map((one) => one.odexMissM(tried))) <= flownMissM)!;
  report(`at the plate a flight is ${flownMissM.toExponential(1)} m off, odex at ${tolerance.toExponential(1)} ${worst(cases.map((one) => one.odexMissM(tolerance))).toExponential(1)} m`);
  const odex: Side = { name: 'odex', many: 12, work: (i) => oneOf(cases, i).byOdex(tolerance) };
  expect(timesAsMuch(odex, aFlight)).toBeGreaterThan(5);
});

// The one time that is asked for as such: path, movement, spin, unexplained movement and what the batter has, of one throw.
test('all that is told of one throw is worked out in under a millisecond', () => {
  const seen = { sight: 'full-flight', axis: 'measured', units: UNITS, standardErrors: { spinRate: 15, tilt: 2 } } as const;
  const mound = { hand: 'right', stage: 'mound', distanceM: 18.4404 } as const;
  const bodies = [-4, -2, 0, 2, 4].map((tiltMoreDeg) => bodyOf('right', { tiltMoreDeg, seam: { armSide: 0.02, up: -0.03 } }));
  const [firstPath] = bodies.map((body) => analyseThrow(body, seen, mound).path);
  if (firstPath === undefined || typeof firstPath === 'string') throw new Error('the throw has no path');
  expect(analyseThrow(bodies[0]!, seen, mound).unexplained).toMatchObject({ kind: 'unexplained', measurement: expect.any(Array) });
  const told = (index: number): unknown => {
    const { path } = analyseThrow(oneOf(bodies, index), seen, mound);
    return typeof path === 'string' ? path : gapBetween(path, firstPath);
  };
  const aThrow: Side = { name: 'all that is told of a throw', many: 5, work: told };
  for (let turn = 0; turn < WARM_UP; turn += 1) takeTurns(aThrow, aFlight);
  const { oneUs, otherUs } = takeTurns(aThrow, aFlight);
  report(`all that is told of a throw: ${oneUs.toFixed(0)} µs, ${(oneUs / otherUs).toFixed(0)} flights`);
  expect(oneUs).toBeLessThan(1000);
});
