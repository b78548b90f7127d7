import { describe, expect, test } from 'vitest';
import { verticalApproachRad } from '../../../core/flight/approach.ts';
import { stateAtTime, stateAtY } from '../../../core/flight/constant-acceleration.ts';
import { flyPitch, type Flight, type FlightConditions } from '../../../core/flight/fly.ts';
import { inducedBreak, inducedBreakBetween, transverseCoefficients } from '../../../core/flight/movement.ts';
import type { FittedPath } from '../../../core/flight/fitted-path.ts';
import { fitPath, type PathFitOptions } from '../../../core/flight/path-fit.ts';
import type { PathSample } from '../../../core/flight/path-samples.ts';
import { tiltFromForce, tiltFromClock, tiltFromSpin } from '../../../core/flight/spin.ts';
import { norm, type Vector } from '../../../core/flight/vector.ts';
import { degreeRad, inchM, mphMps } from './feet-and-miles.ts';
import { seeded } from './noise.ts';
import { changeup, fastball, launchOf, tailingFastball, type PitchCard } from './pitches.ts';
import { samplesOf } from './seen.ts';

const air = { airDensityKgM3: 1.2 };
const releaseYM = 16.764;

function fitted(samples: readonly PathSample[], options: PathFitOptions = {}): FittedPath {
  const fit = fitPath(samples, { fromYM: releaseYM, ...air, ...options });
  if (fit.kind === 'problem') throw new Error(fit.sentence);
  return fit;
}

const fly = (pitch: PitchCard, conditions: Partial<FlightConditions> = {}): Flight => flyPitch(launchOf(pitch), { ...air, ...conditions });
const breakErrorIn = (fit: FittedPath, flight: Flight): [number, number] => {
  const got = inducedBreak(fit.path, releaseYM)!;
  const truth = inducedBreakBetween(flight.start, flight.end);
  return [(got.horizontalM - truth.horizontalM) / inchM, (got.verticalM - truth.verticalM) / inchM];
};

describe.each([
  ['a fastball of pure backspin', fastball],
  ['a fastball at 1:00', tailingFastball],
  ['a changeup at 2:00', changeup],
])('The path fitted through %s, seen without noise', (name, pitch) => {
  const flight = fly(pitch);
  const fit = fitted(samplesOf(flight));
  const alongSpinRadps = tiltFromSpin(launchOf(pitch).spinRadps, flight.start.velocityMps)!;

  test('has release speed, induced break, arrival and approach right, where the plain parabola is up to 0.7 in off', () => {
    const [right, up] = breakErrorIn(fit, flight);
    const speedErrorMph = (norm(fit.path.velocityMps) - norm(flight.start.velocityMps)) / mphMps;
    const endErrorMph = (norm(fit.arrival.velocityMps) - norm(flight.end.velocityMps)) / mphMps;
    const approachErrorDeg = (verticalApproachRad(fit.arrival.velocityMps) - verticalApproachRad(flight.end.velocityMps)) / degreeRad;
    const pathEnd = stateAtY(fit.path, 0.4318)!;
    console.log(`${name}: break off by ${right.toFixed(3)}, ${up.toFixed(3)} in; release speed ${speedErrorMph.toFixed(4)} mph; end speed ${endErrorMph.toFixed(4)} mph (nine numbers ${((norm(pathEnd.velocityMps) - norm(flight.end.velocityMps)) / mphMps).toFixed(3)}); approach ${approachErrorDeg.toFixed(4)}°`);
    expect(Math.abs(right)).toBeLessThan(0.1);
    expect(Math.abs(up)).toBeLessThan(0.1);
    expect(Math.abs(speedErrorMph)).toBeLessThan(0.01);
    expect(Math.abs(endErrorMph)).toBeLessThan(0.01);
    expect(Math.abs(approachErrorDeg)).toBeLessThan(0.02);
    expect(Math.abs(fit.arrival.timeS - flight.end.timeS)).toBeLessThan(2e-6);
    expect(fit.startTimeS).toBeCloseTo(7, 5);
    fit.arrival.positionM.forEach((value, i) => expect(Math.abs(value - flight.end.positionM[i]!)).toBeLessThan(2e-4));
    expect(fit.rejected).toEqual([]);
  });

  test('told as nine numbers stays within 0.5 in of the flight in between, meets it at both ends, and its approach is within 0.2° there', () => {
    let farthestM = 0;
    for (let i = 0; i <= 50; i += 1) {
      const timeS = (flight.end.timeS * i) / 50;
      const onPath = stateAtTime(fit.path, timeS).positionM;
      farthestM = Math.max(farthestM, norm(flight.positionAt(timeS).map((value, axis) => value - onPath[axis]!) as unknown as Vector));
    }
    expect(farthestM / inchM).toBeLessThan(0.5);
    const end = stateAtY(fit.path, 0.4318)!;
    expect(end.timeS).toBeCloseTo(fit.arrival.timeS, 12);
    end.positionM.forEach((value, i) => expect(value).toBeCloseTo(fit.arrival.positionM[i]!, 10));
    expect(Math.abs(verticalApproachRad(end.velocityMps) - verticalApproachRad(flight.end.velocityMps)) / degreeRad).toBeLessThan(0.2);
  });

  test('in the middle of the flight gives the spin back: transverse rate within 2 %, direction within 2°', () => {
    const air0 = transverseCoefficients(fit.midFlight, releaseYM, 1.2)!;
    const rateError = (air0.transverseSpinRadps! * 30) / Math.PI / (pitch.spinRpm * pitch.efficiency) - 1;
    const tilt = tiltFromForce(air0.magnusMps2[0], air0.magnusMps2[2])!;
    const wrong = tilt - tiltFromClock({ hours: pitch.hours, minutes: 0 });
    console.log(`${name}: transverse spin off by ${(100 * rateError).toFixed(2)} %`);
    expect(Math.abs(rateError)).toBeLessThan(0.02);
    expect(Math.abs(Math.atan2(Math.sin(wrong), Math.cos(wrong))) / degreeRad).toBeLessThan(3);
  });

  test('with the measured gyro spin has the break within 0.02 in, even where only the first 60 % was seen', () => {
    const gyro = Math.sin(alongSpinRadps.gyroRad) * ((pitch.spinRpm * Math.PI) / 30);
    for (const seenTo of [1, 0.6]) {
      const errors = breakErrorIn(fitted(samplesOf(flight, { seenTo }), { alongSpinRadps: gyro }), flight);
      for (const error of errors) expect(Math.abs(error)).toBeLessThan(0.02);
    }
  });
});

describe('A noisy path', () => {
  test('with three gross outliers of 25 cm in 100 samples loses just those, and its break moves by less than one standard error', () => {
    const flight = fly(changeup);
    for (let seed = 1; seed <= 40; seed += 1) {
      const clean = samplesOf(flight, { noiseM: 0.004, seed });
      const { uniform } = seeded(5000 + seed);
      const bad = new Set<number>();
      while (bad.size < 3) bad.add(Math.floor(100 * uniform()));
      const dirty = clean.map((sample, i): PathSample => (bad.has(i) ? { ...sample, positionM: [sample.positionM[0] + 0.15, sample.positionM[1], sample.positionM[2] - 0.2] } : sample));
      const [before, after] = [fitted(clean), fitted(dirty)];
      expect(after.rejected).toEqual(expect.arrayContaining([...bad]));
      expect(after.rejected.length).toBeLessThan(5);
      const [a, b] = [inducedBreak(before.path, releaseYM)!, inducedBreak(after.path, releaseYM)!];
      expect(Math.abs(a.verticalM - b.verticalM)).toBeLessThan(before.errors.verticalM);
      expect(Math.abs(a.horizontalM - b.horizontalM)).toBeLessThan(before.errors.horizontalM);
    }
  });

  test('ends in the same place from wherever it starts: with its misreads taken out beforehand it differs by less than 10 µm, a tenth of what a view is rounded to', () => {
    let farthestM = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const clean = samplesOf(fly(changeup), { noiseM: 0.004, seed });
      const bad = [3 + seed, 20 + seed, 50 + seed];
      const dirty = clean.map((sample, i): PathSample => (bad.includes(i) ? { ...sample, positionM: [sample.positionM[0] - 0.2, sample.positionM[1] + 0.1, sample.positionM[2] + 0.15] } : sample));
      const [cut, never] = [fitted(dirty), fitted(dirty.filter((_, i) => !bad.includes(i)))];
      if (cut.rejected.length !== 3 + never.rejected.length) continue;
      farthestM = Math.max(farthestM, Math.abs(cut.breaks.verticalM - never.breaks.verticalM), Math.abs(cut.breaks.horizontalM - never.breaks.horizontalM), Math.abs(cut.arrival.positionM[2] - never.arrival.positionM[2]));
    }
    console.log(`two starts of a fit end within ${(farthestM * 1e6).toFixed(2)} µm of each other`);
    expect(farthestM).toBeGreaterThan(0);
    expect(farthestM).toBeLessThan(1e-5);
  });

  test('needs no order of its samples and starts at the earliest kept one where no release plane is given', () => {
    const flight = fly(changeup);
    const samples = samplesOf(flight, { noiseM: 0.003 });
    const backwards = samples.toReversed();
    const [forward, backward] = [fitPath(samples, air), fitPath(backwards, air)];
    if (forward.kind === 'problem' || backward.kind === 'problem') throw new Error('both should fit');
    forward.path.velocityMps.forEach((value, i) => expect(backward.path.velocityMps[i]).toBeCloseTo(value, 9));
    expect(forward.path.positionM[1]).toBeCloseTo(samples[0]!.positionM[1], 9);
  });

  test('of a catch-play throw over 30 m is fitted to the glove', () => {
    const flight = flyPitch({ positionM: [0, 30, 1.8], velocityMps: [0.3, -28, 4], spinRadps: [-170, 0, 30] }, { ...air, until: { yM: 0 } });
    const fit = fitted(samplesOf(flight, { noiseM: 0.004 }), { fromYM: 30, toYM: 0 });
    expect(fit.arrival.timeS).toBeCloseTo(flight.end.timeS, 3);
    expect(Math.abs(fit.arrival.positionM[2] - flight.end.positionM[2])).toBeLessThan(0.01);
    expect(Math.abs(norm(fit.path.velocityMps) - norm(flight.start.velocityMps))).toBeLessThan(0.1);
  });

  test('of a ball pushed aside by its seams holds that push in its break, to 0.05 in', () => {
    const pushed = fly({ ...changeup, efficiency: 1 }, { seamCoefficient: { x: -0.03, z: 0 } });
    const plain = fly({ ...changeup, efficiency: 1 });
    const movement = (flight: Flight): number => inducedBreak(fitted(samplesOf(flight)).path, releaseYM)!.horizontalM / inchM;
    const truth = (flight: Flight): number => inducedBreakBetween(flight.start, flight.end).horizontalM / inchM;
    expect(movement(pushed) - movement(plain)).toBeCloseTo(truth(pushed) - truth(plain), 1);
    expect(truth(pushed) - truth(plain)).toBeLessThan(-2);
  });
});

describe('A path that cannot be read', () => {
  const samples = samplesOf(fly(changeup), { noiseM: 0.003 });
  const codeOf = (path: readonly PathSample[], options: PathFitOptions = { fromYM: releaseYM }): string => {
    const fit = fitPath(path, options);
    if (fit.kind === 'path') return 'path';
    expect(fit.sentence).toMatch(/^[A-Z0-9].*\.$/);
    return fit.code;
  };

  test('is too short with few samples, or seen for too little of the flight', () => {
    expect(codeOf(samples.slice(0, 7))).toBe('too-short');
    expect(codeOf(samples.slice(0, 30))).toBe('too-short');
    expect(codeOf([])).toBe('too-short');
    expect(codeOf(samples)).toBe('path');
  });

  test('is too noisy where the samples scatter by half a metre, or half of them lie elsewhere', () => {
    expect(codeOf(samplesOf(fly(changeup), { count: 30, noiseM: 0.5 }))).not.toBe('path');
    const { normal } = seeded(3);
    const half = samples.map((sample, i): PathSample => (i % 5 < 2 ? { ...sample, positionM: [5 * normal(), sample.positionM[1], 5 * normal()] } : sample));
    expect(codeOf(half)).toBe('too-noisy');
    expect(codeOf(samplesOf(fly(changeup), { count: 40, noiseM: 0.2 }))).toBe('too-noisy');
    const zigzag = samples.map((sample, i): PathSample => ({ ...sample, positionM: [sample.positionM[0] + (i % 2 === 0 ? 0.15 : -0.15), sample.positionM[1], sample.positionM[2]] }));
    expect(codeOf(zigzag)).toBe('too-noisy');
  });

  test('is impossible with a place that is no number, one time for all, or a ball that flies away', () => {
    expect(codeOf([{ timeS: 7, positionM: [0, Number.NaN, 1] }, ...samples])).toBe('impossible');
    expect(codeOf(samples.map((sample) => ({ ...sample, timeS: 7 })))).toBe('impossible');
    expect(codeOf(samples.map((sample, i) => ({ ...sample, positionM: samples[samples.length - 1 - i]!.positionM })))).toBe('impossible');
    expect(codeOf(samples.map((sample) => ({ ...sample, timeS: sample.timeS / 10 })))).toBe('impossible');
    expect(codeOf(samples.map((sample) => ({ ...sample, timeS: sample.timeS * 1000 })))).toBe('impossible');
    expect(codeOf(samples, { fromYM: releaseYM, toYM: 25 })).toBe('impossible');
  });

  test('is impossible where the ball gains speed on its way, slows as if in water, or is pushed as no spin by the law can', () => {
    const bent = (along: number, up: number) => samples.map(({ timeS, positionM: [x, y, z] }): PathSample => ({ timeS, positionM: [x, y - (along / 2) * (timeS - 7) ** 2, z + (up / 2) * (timeS - 7) ** 2] }));
    for (const path of [bent(20, 0), bent(-40, 0), bent(0, 60)]) expect(codeOf(path)).toBe('impossible');
    expect(codeOf(bent(0, 0))).toBe('path');
  });
});
