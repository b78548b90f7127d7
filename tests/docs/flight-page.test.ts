import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SEAM_FEWEST_THROWS, seamBoundM } from '../../core/coaching/seam-effect.ts';
import { dragCoefficient, liftCoefficient, spinParameterForLift, spinParameterOf } from '../../core/flight/aerodynamics.ts';
import { standardAirDensityKgM3, standardPressurePa } from '../../core/flight/air.ts';
import { flightTimeFromSpeedS } from '../../core/flight/arrival.ts';
import { ball, plate, rubber, standardGravityMps2 } from '../../core/flight/ball.ts';
import { stateAtTime } from '../../core/flight/constant-acceleration.ts';
import { constantThrough } from '../../core/flight/constant-through.ts';
import { apartAtDecision, decisionBeforeS } from '../../core/flight/decision-point.ts';
import { ballWidthM, gapLine, type Apart } from '../../core/flight/gap-line.ts';
import { crossLiftCoefficient, sawickiLiftCoefficient } from '../../core/flight/lift-laws.ts';
import { seamCurve } from '../../core/flight/seam-curve.ts';
import { norm } from '../../core/flight/vector.ts';
import { degreeRad, inchM } from '../core/flight/feet-and-miles.ts';
import { allDrawings } from './drawings/all.ts';
import { aimedFast, fastFlight, movedIn, slow, slowFlight, slowPath } from './drawings/thrown.ts';
import { anchors, filesNamed, numberOf, numbersIn, PAGE, rowOf, stands } from './page.ts';
import { pairRows } from './pair-rows.ts';

const FOLDER = new URL('../../docs/flight/', import.meta.url);
const onDisk = existsSync(FOLDER) ? readdirSync(FOLDER) : [];
const drawings = allDrawings();
const spinParameters = [0.05, 0.08, 0.12, 0.2, 0.3, 0.5];

describe('The page on the ball in the air', () => {
  test('names no file that is not there', () => {
    expect(filesNamed().length).toBeGreaterThan(60);
    expect(filesNamed().filter((file) => !stands(file))).toEqual([]);
  });

  test('leads to headings that it has', () => {
    const { used, there } = anchors();
    expect(used.length).toBeGreaterThan(15);
    expect(used.filter((name) => !there.includes(name))).toEqual([]);
  });

  test('shows every drawing, and there are no others', () => {
    expect(onDisk.toSorted()).toEqual([...drawings.keys()].toSorted());
    for (const name of drawings.keys()) expect(PAGE).toContain(`](flight/${name})`);
  });
});

test.each([...drawings])('docs/flight/%s is what core draws today; npx vitest run tests/docs -u draws it again', async (name, drawn) => {
  await expect(drawn).toMatchFileSnapshot(`../../docs/flight/${name}`);
});

describe('A constant on the page is core’s own:', () => {
  test.each([
    ['ball mass', ball.massKg, 9], ['ball radius', ball.radiusM, 9], ['gravity', standardGravityMps2, 12], ['rubber', rubber.yM, 9],
    ['front of the plate', plate.frontYM, 9], ['plate width', plate.widthM, 9], ['standard air', standardAirDensityKgM3, 5],
    ['decision point', 1000 * decisionBeforeS.usual, 9],
  ])('%s', (name, value, digits) => {
    expect(numberOf(rowOf(name)[0]!)).toBeCloseTo(value, digits);
  });

  test('the drag of a ball of which only the speed is known', () => {
    const drag = numberOf(rowOf('drag of a ball of which only the speed is known')[0]!);
    expect(flightTimeFromSpeedS(40, 16, 1.2, drag)).toBe(flightTimeFromSpeedS(40, 16, 1.2));
  });

  test('drag and lift, and the way back from lift to spin', () => {
    const [base, slope] = numbersIn(/C_D = ([\d.]+) \+ ([\d.]+)·\(rpm\/1000\)/);
    const [top, offset, steep] = numbersIn(/C_L = ([\d.]+)·S\/\(([\d.]+) \+ ([\d.]+)·S\)/);
    const [up, over, less] = numbersIn(/S_T = ([\d.]+)·C_L\/\(([\d.]+) − ([\d.]+)·C_L\)/);
    for (const rpm of [0, 1700, 2600]) expect(base! + (slope! * rpm) / 1000).toBeCloseTo(dragCoefficient(rpm), 12);
    for (const s of spinParameters) {
      const lift = liftCoefficient(s);
      expect((top! * s) / (offset! + steep! * s)).toBeCloseTo(lift, 12);
      expect((up! * lift) / (over! - less! * lift)).toBeCloseTo(spinParameterForLift(lift)!, 12);
    }
  });

  test('the two other lift laws', () => {
    const [low, edge, base, slope] = numbersIn(/([\d.]+)·S below\s+S = ([\d.]+), ([\d.]+) \+ ([\d.]+)·S from there/);
    const [floor, rise] = numbersIn(/1\/\(([\d.]+) \+ ([\d.]+)\/S\)/);
    for (const s of spinParameters) {
      expect(s < edge! ? low! * s : base! + slope! * s).toBeCloseTo(sawickiLiftCoefficient(s), 12);
      expect(1 / (floor! + rise! / s)).toBeCloseTo(crossLiftCoefficient(s), 12);
    }
  });

  test('the bound of a seam effect: two inches, an inch outdoors, the axis over the movement, five throws', () => {
    const wind = numberOf(rowOf('wind, outdoors and not said')[0]!);
    const own = numberOf(rowOf('own')[0]!);
    const bound = (where: 'indoors' | 'outdoors'): number => seamBoundM({ axisBiasRad: 3 * degreeRad, movementM: 18 * inchM, wind: where }) / inchM;
    const axis = numbersIn(/on 18 in ([\d.]+) in/)[0]!;
    expect(bound('indoors')).toBeCloseTo(own + axis, 2);
    expect(bound('outdoors')).toBeCloseTo(own + axis + wind, 2);
    expect(numbersIn(/Against the bound of ([\d.]+) in/)[0]).toBeCloseTo(bound('outdoors'), 2);
    expect(PAGE).toContain(`too few: under ${SEAM_FEWEST_THROWS} throws`);
  });

  test('pressure over height, and the seam', () => {
    const [sea, lapse, kelvin, power] = numbersIn(/p = (\d+)·\(1 − ([\d.]+)·h\/([\d.]+)\)\^([\d.]+)/);
    for (const altitudeM of [0, 700, 1609]) expect(sea! * (1 - (lapse! * altitudeM) / kelvin!) ** power!).toBeCloseTo(standardPressurePa(altitudeM), 6);
    const [a, of, b, ofToo] = numbersIn(/a = (\d)\/(\d), b = (\d)\/(\d) of the radius/);
    expect(norm(seamCurve(8)[1]!)).toBeCloseTo(a! / of! + b! / ofToo!, 12);
    expect(Math.hypot(seamCurve(8)[1]![0], seamCurve(8)[1]![1])).toBeCloseTo(a! / of! - b! / ofToo!, 12);
  });
});

describe('A number worked out on the page is what core works out today:', () => {
  test.each(pairRows)('%s of the pair', (name, cells) => {
    expect(rowOf(name)).toEqual(cells);
  });

  test('the separation of the pair', () => {
    const [down, side] = numbersIn(/separated by ([\d.]+) in down and ([\d.]+) in arm side/);
    expect(movedIn(fastFlight).up - movedIn(slowFlight).up).toBeCloseTo(down!, 1);
    expect(movedIn(slowFlight).armSide - movedIn(fastFlight).armSide).toBeCloseTo(side!, 1);
  });

  test('how far the published lift laws lie apart', () => {
    const percent = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(100 * value).toFixed(1)} %`;
    const beside = (s: number): readonly number[] => [sawickiLiftCoefficient, crossLiftCoefficient].map((law) => law(s) / liftCoefficient(s) - 1);
    for (const s of ['0.12', '0.16', '0.20', '0.25', '0.30']) expect(rowOf(s)).toEqual(beside(Number(s)).map(percent));
    const farthest = Array.from({ length: 181 }, (_, i) => 100 * Math.max(...beside(0.12 + i * 0.001).map(Math.abs)));
    const [least, most] = numbersIn(/differs by ([\d.]+)–([\d.]+) % of the lift where pitches live/);
    expect(Math.min(...farthest)).toBeCloseTo(least!, 1);
    expect(Math.max(...farthest)).toBeCloseTo(most!, 1);
    expect(spinParameterOf(slow.spinRadps, slow.velocityMps)).toBeCloseTo(numbersIn(/the changeup's S of (\d\.\d+)/)[0]!, 3);
  });

  test('the gap of the pair', () => {
    const words = ({ acrossM, widths }: Apart): string => `${(acrossM / inchM).toFixed(1)} in, ${widths.toFixed(1)} widths`;
    const at = (basis: 'same-time' | 'same-distance'): string => words(apartAtDecision(slowPath, aimedFast, { beforeS: decisionBeforeS.usual, basis })!);
    expect(rowOf('at the decision point')).toEqual([at('same-time'), at('same-distance')]);
    expect(rowOf('when the fastball is at the plate')[0]).toBe(words(gapLine(slowPath, aimedFast)!.atPlate));
    expect(ballWidthM).toBe(2 * ball.radiusM);
  });

  test('how near a parabola comes to the changeup, whose break it still has wrong', () => {
    const path = constantThrough(slowFlight)!;
    const off = Array.from({ length: 201 }, (_, i) => {
      const timeS = (slowFlight.end.timeS * i) / 200;
      return norm(stateAtTime(path, timeS).positionM.map((value, axis) => value - slowFlight.positionAt(timeS)[axis]!) as unknown as typeof path.positionM);
    });
    expect(Math.max(...off) / inchM).toBeLessThan(numbersIn(/the path itself stays within ([\d.]+) in/)[0]!);
  });
});
