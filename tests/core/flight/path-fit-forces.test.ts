import { describe, expect, test } from 'vitest';
import { defaultLaw, dragCoefficient, type AerodynamicLaw } from '../../../core/flight/aerodynamics.ts';
import type { FittedPath } from '../../../core/flight/fitted-path.ts';
import { flyPitch, type Flight, type FlightConditions } from '../../../core/flight/fly.ts';
import { crossLiftCoefficient, sawickiLiftCoefficient } from '../../../core/flight/lift-laws.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { fitPath, type PathFitOptions } from '../../../core/flight/path-fit.ts';
import { cross, norm } from '../../../core/flight/vector.ts';
import { inchM } from './feet-and-miles.ts';
import { changeup, fastball, launchOf } from './pitches.ts';
import { alongOf } from './recovery.ts';
import { samplesOf } from './seen.ts';

const air = { airDensityKgM3: 1.2 };
const launch = launchOf(changeup);
const fly = (conditions: Partial<FlightConditions> = {}): Flight => flyPitch(launch, { ...air, ...conditions });

function fitted(flight: Flight, options: PathFitOptions = {}, noiseM = 0): FittedPath {
  const fit = fitPath(samplesOf(flight, { noiseM }), { ...air, fromYM: launch.positionM[1], ...options });
  if (fit.kind === 'problem') throw new Error(fit.sentence);
  return fit;
}

const transverseRpm = (fit: FittedPath): number => (norm(fit.transverseSpinRadps) * 30) / Math.PI;
const midway = fly().stateAt(0.226).velocityMps;
const rpmAcross = (norm(cross(launch.spinRadps, midway)) / norm(midway)) * (30 / Math.PI);

describe('The forces of a fitted path', () => {
  test('are those that flew it: drag to a thousandth, transverse spin to 0.1 %, the same on the way back through the flight it tells', () => {
    const flight = fly();
    const fit = fitted(flight, { alongSpinRadps: alongOf({ launch, flight }) });
    expect(fit.dragCoefficient).toBeCloseTo(dragCoefficient(changeup.spinRpm), 4);
    expect(Math.abs(transverseRpm(fit) / rpmAcross - 1)).toBeLessThan(0.001);
    expect(fit.seamCoefficient).toBeNull();
    for (const timeS of [0, 0.2, fit.arrival.timeS]) {
      fit.at(timeS).positionM.forEach((value, i) => expect(Math.abs(value - flight.positionAt(timeS)[i]!)).toBeLessThan(2e-5));
    }
    fit.at(fit.arrival.timeS).positionM.forEach((value, i) => expect(Math.abs(value - fit.arrival.positionM[i]!)).toBeLessThan(1e-7));
    expect(() => fit.at(fit.arrival.timeS + 0.01)).toThrow(RangeError);
  });

  test('with a measured spin are drag and the push that the spin leaves over, wherever a seam pushes', () => {
    const seamCoefficient = { x: -0.03, z: 0.02 };
    const fit = fitted(fly({ seamCoefficient }), { measuredSpinRadps: launch.spinRadps });
    expect(fit.seamCoefficient!.x).toBeCloseTo(seamCoefficient.x, 5);
    expect(fit.seamCoefficient!.z).toBeCloseTo(seamCoefficient.z, 5);
    expect(fit.spinRadps).toEqual(launch.spinRadps);
    expect(fitted(fly(), { measuredSpinRadps: launch.spinRadps }).seamCoefficient!.x).toBeCloseTo(0, 5);
  });

  test('know a push of 0.01 beside the spin, 0.93 in, to a third of it with 4 mm of noise in 100 samples', () => {
    const fit = fitted(fly(), { measuredSpinRadps: launch.spinRadps }, 0.004);
    expect(fit.errors.seamCoefficient.x).toBeGreaterThan(0.001);
    expect(fit.errors.seamCoefficient.x).toBeLessThan(0.0033);
    expect(Math.abs(fit.seamCoefficient!.x)).toBeLessThan(4 * fit.errors.seamCoefficient.x);
  });

  test('in a wind that is known are those of still air, and in one that is not the drag is off by what the wind makes of it', () => {
    const windMps = [1.5, 3, 0] as const; // 3 m/s against the ball
    const blown = fly({ windMps });
    const [known, unknown] = [fitted(blown, { windMps, measuredSpinRadps: launch.spinRadps }), fitted(blown, { measuredSpinRadps: launch.spinRadps })];
    expect(known.dragCoefficient).toBeCloseTo(dragCoefficient(changeup.spinRpm), 5);
    expect(norm([known.seamCoefficient!.x, 0, known.seamCoefficient!.z])).toBeLessThan(1e-5);
    expect(unknown.dragCoefficient / known.dragCoefficient).toBeGreaterThan(1.15);
  });

  test('read by the law they were flown by give the spin back, and by another law only the break', () => {
    const laws: AerodynamicLaw[] = [{ ...defaultLaw, liftCoefficient: sawickiLiftCoefficient }, { ...defaultLaw, liftCoefficient: crossLiftCoefficient }];
    for (const law of laws) {
      const flight = fly({ law });
      const options = { alongSpinRadps: alongOf({ launch, flight }) };
      const [own, other] = [fitted(flight, { ...options, law }), fitted(flight, options)];
      const truth = inducedBreakBetween(flight.start, flight.end);
      const offIn = (fit: FittedPath): number => Math.hypot(fit.breaks.verticalM - truth.verticalM, fit.breaks.horizontalM - truth.horizontalM) / inchM;
      console.log(`another law: spin ${(100 * (transverseRpm(other) / rpmAcross - 1)).toFixed(1)} % off and break ${offIn(other).toFixed(3)} in; its own: ${(100 * (transverseRpm(own) / rpmAcross - 1)).toFixed(2)} % and ${offIn(own).toFixed(3)} in`);
      expect(Math.abs(transverseRpm(own) / rpmAcross - 1)).toBeLessThan(0.001);
      expect(offIn(own)).toBeLessThan(0.02);
      expect(offIn(other)).toBeLessThan(0.15);
    }
  });

  test('of a ball without spin across its flight are drag alone, with errors that are numbers', () => {
    const gyro = { ...launch, spinRadps: [0, 0, 0] as const };
    const fit = fitPath(samplesOf(flyPitch(gyro, air)), { ...air, fromYM: launch.positionM[1] });
    expect(fit.kind).toBe('path');
    if (fit.kind === 'problem') return;
    expect(transverseRpm(fit)).toBeLessThan(1);
    expect(fit.liftCoefficient).toBeLessThan(1e-3);
    expect(Number.isFinite(fit.errors.transverseSpinRadps) && Number.isFinite(fit.errors.liftCoefficient)).toBe(true);
  });
});

test('The two breaks of a path vary together as its covariance says: mirrored, their covariance changes its sign and nothing else', () => {
  const samples = samplesOf(flyPitch(launchOf(fastball), air), { noiseM: 0.004 });
  const mirrored = samples.map(({ timeS, positionM: [x, y, z] }) => ({ timeS, positionM: [-x, y, z] as const }));
  const [right, left] = [fitPath(samples, air) as FittedPath, fitPath(mirrored, air) as FittedPath];
  expect(left.breaks.verticalM).toBe(right.breaks.verticalM);
  expect(left.breaks.horizontalM).toBe(-right.breaks.horizontalM);
  expect(left.breaks.covariance).toEqual([[right.breaks.covariance[0][0], -right.breaks.covariance[0][1]], [-right.breaks.covariance[1][0], right.breaks.covariance[1][1]]]);
  expect(left.transverseSpinRadps.map((value, i) => value * [1, -1, -1][i]!)).toEqual(right.transverseSpinRadps);
  expect(left.errors.verticalM).toBe(right.errors.verticalM);
});
