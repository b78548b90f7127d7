import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aimedAt, pathFromRelease } from '../../../core/flight/aim.ts';
import { stateAtY, timeAtY, type ConstantAcceleration } from '../../../core/flight/constant-acceleration.ts';
import { apartAtDecision, decisionBeforeS } from '../../../core/flight/decision-point.ts';
import { flyPitch, type Flight } from '../../../core/flight/fly.ts';
import { apartOf, ballWidthM, gapLine } from '../../../core/flight/gap-line.ts';
import { mirrorPath } from '../../../core/flight/mirror.ts';
import { inducedBreak, inducedBreakBetween } from '../../../core/flight/movement.ts';
import { norm } from '../../../core/flight/vector.ts';
import { inchM } from './feet-and-miles.ts';
import { changeup, launchOf, tailingFastball } from './pitches.ts';
import { flownTowards } from './re-aimed.ts';

const air = { airDensityKgM3: 1.2 };
const pathOf = ({ start, end }: Flight): ConstantAcceleration => pathFromRelease(start, end)!;
const fastballFlight = flyPitch(launchOf(tailingFastball), air);
const changeupFlight = flyPitch(launchOf(changeup), air);
const fastballPath = pathOf(fastballFlight);
const changeupPath = pathOf(changeupFlight);
const plateOf = ({ end }: Flight) => ({ xM: end.positionM[0], zM: end.positionM[2] });

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPath: fc.Arbitrary<ConstantAcceleration> = fc.record({
  positionM: fc.tuple(between(-1, 1), between(15, 17.5), between(0.8, 2.1)),
  velocityMps: fc.tuple(between(-2, 2), between(-46, -26), between(-3, 2)),
  accelerationMps2: fc.tuple(between(-8, 8), between(4, 10), between(-16, 0)),
});
const anyPlace = fc.record({ xM: between(-0.6, 0.6), zM: between(-0.2, 1.5) });

describe('A path said as its release and one acceleration', () => {
  test('has the flight time, the plate place and the induced break of the flight it stands for', () => {
    expect(timeAtY(changeupPath, 0.4318)!).toBeCloseTo(changeupFlight.end.timeS, 12);
    const arrival = stateAtY(changeupPath, 0.4318)!;
    arrival.positionM.forEach((place, axis) => expect(place).toBeCloseTo(changeupFlight.end.positionM[axis]!, 12));
    const moved = inducedBreak(changeupPath, changeupPath.positionM[1])!;
    const flown = inducedBreakBetween(changeupFlight.start, changeupFlight.end);
    expect(moved.verticalM).toBeCloseTo(flown.verticalM, 12);
    expect(moved.horizontalM).toBeCloseTo(flown.horizontalM, 12);
  });

  test('needs an arrival after the release', () => {
    expect(pathFromRelease(changeupFlight.end, changeupFlight.start)).toBeNull();
  });
});

describe('A fastball aimed at another place', () => {
  test('crosses the plate there, from the same hand, as fast and as hard pulled as before', () => {
    fc.assert(
      fc.property(anyPath, anyPlace, (path, place) => {
        const aimed = aimedAt(path, place)!;
        const [x, , z] = stateAtY(aimed, 0.4318)!.positionM;
        const pull = ({ accelerationMps2: [ax, ay, az] }: ConstantAcceleration): number => norm([ax, ay, az + 9.80665]);
        expect(Math.abs(x - place.xM) + Math.abs(z - place.zM)).toBeLessThan(1e-9);
        expect(aimed.positionM).toEqual(path.positionM);
        expect(norm(aimed.velocityMps)).toBeCloseTo(norm(path.velocityMps), 9);
        expect(pull(aimed)).toBeCloseTo(pull(path), 9);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  test('of a left-hander is the same in the mirror, to the last bit', () => {
    fc.assert(
      fc.property(anyPath, anyPlace, (path, { xM, zM }) => {
        expect(mirrorPath(aimedAt(mirrorPath(path), { xM: -xM, zM })!)).toEqual(mirrorPath(mirrorPath(aimedAt(path, { xM, zM })!)));
      }),
      { seed: 12, numRuns: 200 },
    );
  });

  test.each([[0.3, 0], [0, -0.5], [-0.4, 0.4], [0.6, -0.6]])('really flies there: %s m across and %s m up, ball and axis turned together, it misses by less than 0.05 in', (right, up) => {
    const place = { xM: fastballFlight.end.positionM[0] + right, zM: fastballFlight.end.positionM[2] + up };
    const aimed = aimedAt(fastballPath, place)!;
    const { end } = flownTowards(launchOf(tailingFastball), aimed.velocityMps, 1.2);
    expect(Math.hypot(end.positionM[0] - place.xM, end.positionM[2] - place.zM)).toBeLessThan(0.05 * inchM);
    expect(Math.abs(end.timeS - timeAtY(aimed, 0.4318)!)).toBeLessThan(5e-5);
  });

  test('cannot be aimed when it does not get to the plate', () => {
    expect(aimedAt({ ...fastballPath, velocityMps: [0, -5, 0] }, { xM: 0, zM: 0.7 })).toBeNull();
  });
});

describe('The gap line', () => {
  test('of a pitch with itself is nothing all the way', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        for (const { widths, behindM } of gapLine(path, path)!.apart) expect([widths, behindM]).toEqual([0, 0]);
      }),
      { seed: 13, numRuns: 100 },
    );
  });

  test('starts at the release shift and ends at the earlier arrival, in ball widths of 2.9 in', () => {
    fc.assert(
      fc.property(anyPath, anyPath, (one, other) => {
        const line = gapLine(one, other)!;
        const shiftM = Math.hypot(one.positionM[0] - other.positionM[0], one.positionM[2] - other.positionM[2]);
        expect(line.apart[0]!.acrossM).toBeCloseTo(shiftM, 12);
        expect(line.apart[0]!.widths * 2.9046 * inchM).toBeCloseTo(shiftM, 4);
        expect(line.stepS * (line.apart.length - 1)).toBeCloseTo(Math.min(timeAtY(one, 0.4318)!, timeAtY(other, 0.4318)!), 12);
        expect(line.atPlate).toBe(line.apart.at(-1));
      }),
      { seed: 14, numRuns: 200 },
    );
  });

  test('is the same for either order and in the mirror, but for who is behind', () => {
    fc.assert(
      fc.property(anyPath, anyPath, (one, other) => {
        const line = gapLine(one, other)!.apart;
        expect(gapLine(mirrorPath(one), mirrorPath(other))!.apart).toEqual(line);
        gapLine(other, one)!.apart.forEach((apart, step) => {
          expect(apart.acrossM).toBe(line[step]!.acrossM);
          expect(apart.behindM).toBe(0 - line[step]!.behindM);
        });
      }),
      { seed: 15, numRuns: 100 },
    );
  });

  test('of two paths of constant acceleration is within 0.07 ball widths of the gap between the real flights', () => {
    const aimed = aimedAt(fastballPath, plateOf(changeupFlight))!;
    const real = flownTowards(launchOf(tailingFastball), aimed.velocityMps, 1.2);
    const { stepS, apart } = gapLine(changeupPath, aimed)!;
    const worst = Math.max(...apart.map(({ widths }, step) => {
      const timeS = Math.min(step * stepS, real.end.timeS);
      return Math.abs(widths - apartOf(changeupFlight.positionAt(timeS), real.positionAt(timeS)).widths);
    }));
    console.log(`gap line: at most ${worst.toFixed(3)} ball widths from the real flights`);
    expect(worst).toBeLessThan(0.07);
    expect(apart.length).toBe(41);
  });

  test('is not there for a ball that does not arrive', () => {
    const stuck: ConstantAcceleration = { positionM: [0, 17, 2], velocityMps: [0, -10, 0], accelerationMps2: [0, 20, -9.8] };
    expect(gapLine(stuck, fastballPath)).toBeNull();
    expect(gapLine(fastballPath, stuck)).toBeNull();
    expect(apartAtDecision(stuck, fastballPath)).toBeNull();
    expect(apartAtDecision(fastballPath, stuck)).toBeNull();
  });
});

describe('The decision point', () => {
  const aimed = aimedAt(fastballPath, plateOf(changeupFlight))!;

  test('is 175 ms before the fastball arrives unless another time is asked for, and says by which rule it compares', () => {
    const usual = apartAtDecision(changeupPath, aimed)!;
    expect(usual).toMatchObject({ beforeS: 0.175, basis: 'same-time' });
    expect(usual.timeS).toBeCloseTo(timeAtY(aimed, 0.4318)! - 0.175, 12);
    expect(apartAtDecision(changeupPath, aimed, { beforeS: 0.2, basis: 'same-distance' })).toMatchObject({ beforeS: 0.2, basis: 'same-distance' });
  });

  test('at the same time lies on the gap line; a setting of 150 to 225 ms moves along it', () => {
    for (const beforeS of [decisionBeforeS.least, decisionBeforeS.usual, decisionBeforeS.most]) {
      const at = apartAtDecision(changeupPath, aimed, { beforeS, basis: 'same-time' })!;
      const { stepS, apart } = gapLine(changeupPath, aimed)!;
      const before = apart[Math.floor(at.timeS / stepS)]!.widths;
      const after = apart[Math.floor(at.timeS / stepS) + 1]!.widths;
      expect(at.widths).toBeGreaterThan(Math.min(before, after) - 1e-3);
      expect(at.widths).toBeLessThan(Math.max(before, after) + 1e-3);
      expect(at.widths).toBeCloseTo(at.acrossM / ballWidthM, 12);
    }
  });

  test('at the same distance compares where both balls pass the same plane', () => {
    const at = apartAtDecision(changeupPath, aimed, { beforeS: 0.175, basis: 'same-distance' })!;
    const planeYM = at.fastballToPlateM + 0.4318;
    expect(at.behindM).toBeCloseTo(0, 9);
    expect(at.acrossM).toBeCloseTo(apartOf(stateAtY(changeupPath, planeYM)!.positionM, stateAtY(aimed, planeYM)!.positionM).acrossM, 12);
  });

  test('is not there where the fastball takes less time than that', () => {
    expect(apartAtDecision(changeupPath, aimed, { beforeS: 0.5, basis: 'same-time' })).toBeNull();
  });
});
