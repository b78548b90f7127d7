import { describe, expect, test } from 'vitest';
import { dragCoefficient, liftCoefficient } from '../../core/flight/aerodynamics.ts';
import { ball } from '../../core/flight/ball.ts';
import { flyPitch } from '../../core/flight/fly.ts';
import { footM } from '../core/flight/feet-and-miles.ts';

/**
 * The teaching data set “Fly_ball” (Kaplan, Pruim & Horton, R package mosaicCalc; its source: A. M. Nathan, Univ. of Illinois):
 * a 103 mph, 2500 rpm backspin flight, published, with its own constants in ft and s. Along y (forward) and z.
 */
const own = { mphFtps: 1.467, gravityFt: 32.174, radiusFt: 0.12102407130946208, kPerFt: 0.005367953626861678 };
const spinRadps = (2500 * Math.PI) / 30;
const start = { y: 2, z: 3, vy: 134.028224, vz: 69.770677 };

function rates(timeS: number, vy: number, vz: number): { s: number; cd: number; cl: number; ay: number; az: number } {
  const speed = Math.hypot(vy, vz);
  const left = Math.exp((-timeS * speed) / (30 * 100 * own.mphFtps));
  const s = (own.radiusFt * spinRadps * left) / speed;
  const cd = dragCoefficient(2500 * left);
  const cl = liftCoefficient(s);
  return { s, cd, cl, ay: own.kPerFt * speed * (-cd * vy - cl * vz), az: own.kPerFt * speed * (cl * vy - cd * vz) - own.gravityFt };
}

describe('The fly ball of the teaching data set', () => {
  test('row 0: S, both coefficients and both accelerations (published)', () => {
    const row = rates(0, start.vy, start.vz);
    expect(row.s).toBeCloseTo(0.209687744, 8);
    expect(row.cd).toBeCloseTo(0.3738, 10);
    expect(row.cl).toBeCloseTo(0.219035575, 8);
    expect(row.ay).toBeCloseTo(-53.031555, 5);
    expect(row.az).toBeCloseTo(-29.516283, 5);
  });

  test('its own explicit steps of 0.01 s give the printed places at 0.1 and 0.5 s (published)', () => {
    let { y, z, vy, vz } = start;
    const places: [number, number][] = [];
    for (let i = 0; i < 50; i += 1) {
      const { ay, az } = rates(i * 0.01, vy, vz);
      y += vy * 0.01 + (ay * 0.0001) / 2;
      z += vz * 0.01 + (az * 0.0001) / 2;
      vy += ay * 0.01;
      vz += az * 0.01;
      places.push([y, z]);
    }
    expect(places[9]![0]).toBeCloseTo(15.143309, 5);
    expect(places[9]![1]).toBeCloseTo(9.829957, 5);
    expect(places[49]![0]).toBeCloseTo(63.116666, 5);
    expect(places[49]![1]).toBeCloseTo(34.259925, 5);
  });

  test('the flight solver reaches the exact place at 0.5 s (computed independently), where the printed table is 0.02 ft short', () => {
    const airDensityKgM3 = ((own.kPerFt / footM) * 2 * ball.massKg) / (Math.PI * ball.radiusM ** 2);
    const flight = flyPitch(
      {
        positionM: [0, start.y * footM, start.z * footM],
        velocityMps: [0, start.vy * footM, start.vz * footM],
        spinRadps: [spinRadps, 0, 0],
      },
      {
        airDensityKgM3,
        gravityMps2: own.gravityFt * footM,
        spinDecayLengthM: 30 * 100 * own.mphFtps * footM,
        until: { yM: 1000 },
        longestS: 0.5,
      },
    );
    expect(flight.ending).toBe('time');
    expect(flight.end.timeS).toBeCloseTo(0.5, 12);
    expect(flight.end.positionM[1] / footM).toBeCloseTo(63.136391, 5);
    expect(flight.end.positionM[2] / footM).toBeCloseTo(34.262175, 5);
    expect(flight.end.positionM[1] / footM - 63.116666).toBeGreaterThan(0.019);
  });
});
