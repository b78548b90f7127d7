import { expect, it } from 'vitest';
import { flyPitch } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { analyseThrow } from '../../../core/session/analyse.ts';
import { degToRad, feetToM, inchesToM, mphToMps } from '../../../core/units/convert.ts';

const units = { distance: 'm', speed: 'm/s', movement: 'm' } as const;
const EXTENSION_M = feetToM(5);

/** The same changeup thrown over another distance, aimed higher the farther it is; seen 100 times without noise. */
function thrownOver(distanceM: number) {
  const velocityMps = [0.3, -mphToMps(70), distanceM / 15] as const;
  const spinRadps = spinAxisFromTilt({ tiltRad: degToRad(60), efficiency: 0.9, spinRpm: 1600, velocityMps });
  const flight = flyPitch({ positionM: [-0.5, distanceM - EXTENSION_M, 1.7], velocityMps, spinRadps }, { airDensityKgM3: 1.2 });
  const path = Array.from({ length: 100 }, (_, index) => {
    const timeS = (flight.end.timeS * index) / 99;
    return [timeS, ...flight.positionAt(timeS)] as [number, number, number, number];
  });
  return { flight, body: { path, spin: { rate: 1600, axis: [...spinRadps] as [number, number, number] }, extension: EXTENSION_M } };
}

// 60.5 ft is the rule (Official Baseball Rules 2, published); 43 and 40 ft as others quote softball's, 46, 50 and 54 ft youth baseball, from memory.
it.each([60.5, 54, 50, 46, 43, 40, 90])('movement and flight time are those of the whole way that was thrown: %s ft', (distanceFt) => {
  const { flight, body } = thrownOver(feetToM(distanceFt));
  const truth = inducedBreakBetween(flight.start, flight.end);
  const read = analyseThrow(body, { sight: 'full-flight', axis: 'measured', units }, { hand: 'right', stage: 'mound', distanceM: feetToM(distanceFt) });
  expect(Math.abs((read.verticalM as number) - truth.verticalM)).toBeLessThan(inchesToM(0.1));
  expect(Math.abs((read.armSideM as number) + truth.horizontalM)).toBeLessThan(inchesToM(0.1));
  expect(Math.abs((read.flightTimeS as number) - flight.end.timeS)).toBeLessThan(1e-4);
});

it('the same spin moves a ball over 40 ft by less than half of what it does over 60.5 ft', () => {
  const [youth, full] = [40, 60.5].map((feet) => {
    const { flight } = thrownOver(feetToM(feet));
    return inducedBreakBetween(flight.start, flight.end).horizontalM;
  });
  expect(youth! / full!).toBeLessThan(0.5);
  expect(youth! / full!).toBeGreaterThan(0.3);
});
