import { describe, expect, test } from 'vitest';
import { flyPitch } from '../../../core/flight/fly.ts';
import { norm, type Vector } from '../../../core/flight/vector.ts';
import { changeup, launchOf } from './pitches.ts';

const air = { airDensityKgM3: 1.2 };

describe('A thrown ball', () => {
  test('in catch play at 18, 27 and 36 m reaches the glove, later and lower in speed the farther it is', () => {
    const throwFrom = (distanceM: number) =>
      flyPitch({ positionM: [0, distanceM, 1.8], velocityMps: [0, -30, 3], spinRadps: [-180, 0, 0] }, { ...air, until: { yM: 0 } });
    const [near, middle, far] = [18, 27, 36].map(throwFrom) as [ReturnType<typeof throwFrom>, ReturnType<typeof throwFrom>, ReturnType<typeof throwFrom>];
    for (const flight of [near, middle, far]) {
      expect(flight.ending).toBe('plane');
      expect(flight.end.positionM[1]).toBeCloseTo(0, 12);
    }
    expect(near.end.timeS).toBeLessThan(middle.end.timeS);
    expect(middle.end.timeS).toBeLessThan(far.end.timeS);
    expect(norm(far.end.velocityMps)).toBeLessThan(norm(near.end.velocityMps));
  });

  test('thrown back towards the mound flies the mirrored flight', () => {
    const back = flyPitch({ positionM: [0, 0, 1.8], velocityMps: [0, 30, 3], spinRadps: [180, 0, 0] }, { ...air, until: { yM: 18 } });
    const there = flyPitch({ positionM: [0, 18, 1.8], velocityMps: [0, -30, 3], spinRadps: [-180, 0, 0] }, { ...air, until: { yM: 0 } });
    expect(back.end.timeS).toBeCloseTo(there.end.timeS, 12);
    expect(back.end.positionM[2]).toBeCloseTo(there.end.positionM[2], 12);
  });

  test('that never reaches the plane stops when its time runs out, and says so', () => {
    const flight = flyPitch({ positionM: [0, 18, 2], velocityMps: [0, 30, 0], spinRadps: [0, 0, 0] }, { ...air, longestS: 1.005 });
    expect(flight.ending).toBe('time');
    expect(flight.end.timeS).toBeCloseTo(1.005, 12);
  });

  test('released on the plane has already arrived', () => {
    const flight = flyPitch({ positionM: [0, 0, 2], velocityMps: [0, -30, 0], spinRadps: [0, 0, 0] }, { ...air, until: { yM: 0 } });
    expect(flight.ending).toBe('plane');
    expect(flight.nodes).toHaveLength(1);
    expect(flight.positionAt(0)).toEqual([0, 0, 2]);
  });

  test('can be asked where it is at any moment of its flight, to a micrometre of a flight flown up to there, and at no other moment', () => {
    const launch = launchOf(changeup);
    const flight = flyPitch(launch, air);
    for (const timeS of [0, 0.1234, 0.3777, flight.end.timeS]) {
      const direct = flyPitch(launch, { ...air, longestS: timeS, timeStepS: 0.003 }).end.positionM;
      flight.positionAt(timeS).forEach((value, i) => expect(Math.abs(value - direct[i]!)).toBeLessThan(1e-6));
    }
    expect(() => flight.positionAt(-0.01)).toThrow(RangeError);
    expect(() => flight.positionAt(flight.end.timeS + 0.01)).toThrow(/lasts from 0/);
    expect(() => flight.positionAt(Number.NaN)).toThrow(RangeError);
  });

  test('with an unexplained force to the left and down ends left and below, and the force takes no speed', () => {
    const launch = launchOf(changeup);
    const plain = flyPitch(launch, air);
    const pushed = flyPitch(launch, { ...air, seamCoefficient: { x: -0.03, z: -0.02 } });
    expect(pushed.end.positionM[0]).toBeLessThan(plain.end.positionM[0] - 0.05);
    expect(pushed.end.positionM[2]).toBeLessThan(plain.end.positionM[2] - 0.03);
    expect(pushed.end.positionM[2]).toBeGreaterThan(plain.end.positionM[2] - 0.1);
    expect(norm(pushed.end.velocityMps)).toBeCloseTo(norm(plain.end.velocityMps), 0);
  });

  test('in wind keeps its forces against the air: with the wind at its back it arrives sooner and lower, and to an eye that drifts with the air nothing has changed', () => {
    const launch = launchOf(changeup);
    const wind = [2, -4, 0.5] as const;
    const blown = flyPitch(launch, { ...air, windMps: wind, longestS: 0.4 });
    const drifting = flyPitch({ ...launch, velocityMps: launch.velocityMps.map((v, i) => v - wind[i]!) as unknown as Vector }, { ...air, longestS: 0.4 });
    blown.end.velocityMps.forEach((v, i) => expect(v).toBeCloseTo(drifting.end.velocityMps[i]! + wind[i]!, 9));
    blown.end.positionM.forEach((p, i) => expect(p).toBeCloseTo(drifting.end.positionM[i]! + 0.4 * wind[i]!, 9));
    const [tail, still] = [flyPitch(launch, { ...air, windMps: [0, -4, 0] }), flyPitch(launch, air)];
    expect(tail.end.timeS).toBeLessThan(still.end.timeS);
    expect(tail.end.positionM[2]).toBeLessThan(still.end.positionM[2]);
  });

  test('tells place and speed at any moment as its own steps do', () => {
    const flight = flyPitch(launchOf(changeup), air);
    for (const timeS of [0, 0.111, 0.3, flight.end.timeS]) {
      const direct = flyPitch(launchOf(changeup), { ...air, longestS: timeS, timeStepS: 0.003 }).end;
      const told = flight.stateAt(timeS);
      told.positionM.forEach((value, i) => expect(Math.abs(value - direct.positionM[i]!)).toBeLessThan(1e-8));
      told.velocityMps.forEach((value, i) => expect(Math.abs(value - direct.velocityMps[i]!)).toBeLessThan(1e-5));
    }
  });
});
