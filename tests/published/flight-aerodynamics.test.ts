import { describe, expect, test } from 'vitest';
import {
  aerodynamicConstantPerM, dragCoefficient, liftCoefficient, spinParameterForLift, spinParameterOf,
} from '../../core/flight/aerodynamics.ts';
import { ball, plate, rubber, standardGravityMps2 } from '../../core/flight/ball.ts';
import { crossLiftCoefficient, sawickiLiftCoefficient } from '../../core/flight/lift-laws.ts';
import { footM, inchM } from '../core/flight/feet-and-miles.ts';

describe('The ball and the field', () => {
  test('the ball is within Official Baseball Rules 3.01 (published) and is the working ball of A. M. Nathan, Univ. of Illinois (published)', () => {
    expect(ball.massKg).toBeCloseTo(5.125 * 0.028349523125, 9);
    expect(ball.radiusM).toBeCloseTo((9.125 * inchM) / (2 * Math.PI), 9);
    expect(ball.massKg).toBeGreaterThan(0.1417476);
    expect(ball.massKg).toBeLessThan(0.148835);
    expect(ball.radiusM).toBeGreaterThan(0.0363828);
    expect(ball.radiusM).toBeLessThan(0.0373935);
  });

  test('plate and rubber are those of Official Baseball Rules 2 (published)', () => {
    expect(rubber.yM).toBeCloseTo(60.5 * footM, 10);
    expect(rubber.heightM).toBeCloseTo(10 * inchM, 10);
    expect(plate.frontYM).toBeCloseTo(17 * inchM, 10);
    expect(plate.widthM).toBeCloseTo(17 * inchM, 10);
  });

  test('the ball touches the plate’s column with its centre within 9.952 in (computed independently)', () => {
    expect((plate.widthM / 2 + ball.radiusM) / inchM).toBeCloseTo(9.952, 3);
  });

  test('standard gravity is that of the 3rd CGPM, 1901 (from memory)', () => {
    expect(standardGravityMps2).toBe(9.80665);
  });
});

const spinParameters = [0.05, 0.1, 0.2, 0.3, 0.5];

describe('Lift', () => {
  test('the default law gives the values of its published coefficients (A. M. Nathan, Univ. of Illinois, published; values computed independently)', () => {
    const expected = [0.08004, 0.1372, 0.21341, 0.26191, 0.32009];
    spinParameters.forEach((s, i) => expect(liftCoefficient(s)).toBeCloseTo(expected[i]!, 5));
  });

  test('Sawicki, Hubbard & Stronge, Am. J. Phys. 71:1152, 2003 (quoted by others)', () => {
    const expected = [0.075, 0.15, 0.21, 0.27, 0.39];
    spinParameters.forEach((s, i) => expect(sawickiLiftCoefficient(s)).toBeCloseTo(expected[i]!, 10));
  });

  test('R. Cross, 1/(2.32 + 0.4/S) (quoted by others)', () => {
    const expected = [0.0969, 0.15823, 0.23148, 0.27372, 0.32051];
    spinParameters.forEach((s, i) => expect(crossLiftCoefficient(s)).toBeCloseTo(expected[i]!, 5));
    expect(crossLiftCoefficient(0)).toBe(0);
  });

  test('the inverse gives the spin parameter back and refuses lift no spin can give', () => {
    for (const s of [0, 0.01, ...spinParameters, 2]) expect(spinParameterForLift(liftCoefficient(s))).toBeCloseTo(s, 10);
    expect(spinParameterForLift(1.12 / 2.333)).toBeNull();
    expect(spinParameterForLift(-0.01)).toBeNull();
  });

  test('gyro spin gives no lift: only the spin across the flight counts (Washington State Univ., MDPI Proc. 49:162, 2020, published)', () => {
    expect(spinParameterOf([0, -200, 0], [0, -40, 0])).toBe(0);
    expect(spinParameterOf([-100, -200, 0], [0, -40, 0])).toBeCloseTo((ball.radiusM * 100) / 40, 12);
  });
});

test('drag at 2500 rpm is 0.3738 (A. M. Nathan, in the teaching data set “Fly_ball”, Kaplan, Pruim & Horton, R package mosaicCalc, published)', () => {
  expect(dragCoefficient(2500)).toBeCloseTo(0.3738, 12);
});

test('a lateral coefficient of 0.01 is 0.927 in over 53.583 ft by ½·K·C·d² (computed independently)', () => {
  expect((0.5 * aerodynamicConstantPerM(1.2) * 0.01 * (53.583 * footM) ** 2) / inchM).toBeCloseTo(0.927, 3);
});
