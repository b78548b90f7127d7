import { describe, expect, test } from 'vitest';
import { pathFromRelease } from '../../core/flight/aim.ts';
import { apartAtDecision } from '../../core/flight/decision-point.ts';
import { flyPitch, type Flight } from '../../core/flight/fly.ts';
import { equationsOfMotion } from '../../core/flight/motion.ts';
import { footM, inchM } from '../core/flight/feet-and-miles.ts';
import { changeup, launchOf, tailingFastball } from '../core/flight/pitches.ts';
import { solveExactly } from '../core/flight/reference-solver.ts';

const air = { airDensityKgM3: 1.2 };
const pathOf = ({ start, end }: Flight) => pathFromRelease(start, end)!;
const ninety = flyPitch(launchOf({ ...tailingFastball, speedMph: 90 }), air);

describe('What the batter has of a 90 mph pitch (Adair, The Physics of Baseball, 2002, quoted by others)', () => {
  test('is about 400 ms: within 30 ms of it from a hand 5.5 ft in front of the rubber', () => {
    expect(Math.abs(ninety.end.timeS - 0.4)).toBeLessThan(0.03);
  });

  test('is a ball about 25 ft away 225 ms after release, by the flight and by the decision point', () => {
    const away = (ninety.positionAt(0.225)[1] - 0.4318) / footM;
    const { fastballToPlateM, timeS } = apartAtDecision(pathOf(ninety), pathOf(ninety), { beforeS: ninety.end.timeS - 0.225, basis: 'same-time' })!;
    console.log(`90 mph: ${(1000 * ninety.end.timeS).toFixed(1)} ms; ${away.toFixed(1)} ft from the front of the plate after 225 ms`);
    expect(Math.abs(away - 25)).toBeLessThan(1);
    expect(timeS).toBeCloseTo(0.225, 9);
    expect(Math.abs(fastballToPlateM / footM - 25)).toBeLessThan(1);
  });
});

test('trap: the gap at the same time and at the same distance differ by inches on one pair: 95 mph at 1:00 and 85 mph at 2:00 (computed independently, npm odex)', () => {
  const [fast, slow] = [launchOf(tailingFastball), launchOf(changeup)];
  const placeOf = (launch: typeof fast, timeS: number): number[] =>
    solveExactly(equationsOfMotion(launch.spinRadps, air), [...launch.positionM, ...launch.velocityMps], timeS);
  const fastball = flyPitch(fast, air);
  const timeS = fastball.end.timeS - 0.175;
  const there = placeOf(fast, timeS);
  let laterS = timeS;
  for (let round = 0; round < 20; round += 1) laterS += (placeOf(slow, laterS)[1]! - there[1]!) / 36;
  const acrossIn = (here: number[]): number => Math.hypot(here[0]! - there[0]!, here[2]! - there[2]!) / inchM;
  const exactIn = { time: acrossIn(placeOf(slow, timeS)), distance: acrossIn(placeOf(slow, laterS)) };
  const [thrown, baseline] = [pathOf(flyPitch(slow, air)), pathOf(fastball)];
  const atTime = apartAtDecision(thrown, baseline, { beforeS: 0.175, basis: 'same-time' })!.acrossM / inchM;
  const atDistance = apartAtDecision(thrown, baseline, { beforeS: 0.175, basis: 'same-distance' })!.acrossM / inchM;
  console.log(`one pair at the decision point: ${atTime.toFixed(2)} in at the same time, ${atDistance.toFixed(2)} in at the same distance; exact ${exactIn.time.toFixed(2)} and ${exactIn.distance.toFixed(2)}`);
  expect(exactIn.time - exactIn.distance).toBeGreaterThan(1.5);
  expect(Math.abs(atTime - exactIn.time)).toBeLessThan(0.2);
  expect(Math.abs(atDistance - exactIn.distance)).toBeLessThan(0.2);
});
