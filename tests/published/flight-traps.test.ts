import { describe, expect, test } from 'vitest';
import { liftCoefficient, spinParameterForLift, spinParameterOf } from '../../core/flight/aerodynamics.ts';
import { pathFromRelease } from '../../core/flight/aim.ts';
import { timeAtY } from '../../core/flight/constant-acceleration.ts';
import { apartAtDecision } from '../../core/flight/decision-point.ts';
import { flyPitch } from '../../core/flight/fly.ts';
import { crossLiftCoefficient, sawickiLiftCoefficient } from '../../core/flight/lift-laws.ts';
import { mirrorSpin, mirrorTilt, mirrorVector } from '../../core/flight/mirror.ts';
import { inducedBreak, transverseCoefficients } from '../../core/flight/movement.ts';
import { spinAxisFromTilt, tiltFromSpin } from '../../core/flight/spin.ts';
import { cross, norm, scale, type Vector } from '../../core/flight/vector.ts';
import { degreeRad, footM, inchM } from '../core/flight/feet-and-miles.ts';
import { changeup, fastball, launchOf, tailingFastball, type PitchCard } from '../core/flight/pitches.ts';

/** Seven ways to be wrong about a pitch without noticing, each with its size. Marks: see the title of each. */
const air = { airDensityKgM3: 1.2 };
const plateYM = 17 * inchM;

describe('Trap 1: spin read back with another lift law than it was flown with', () => {
  const crossInverse = (lift: number): number => 0.4 / (1 / lift - 2.32);

  test('shifts the efficiency of a changeup by −17 % (R. Cross’s law against A. M. Nathan’s, both quoted; the shift computed independently)', () => {
    expect(crossInverse(liftCoefficient(0.16)) / 0.16 - 1).toBeCloseTo(-0.17, 2);
    for (const s of [0.14, 0.15, 0.17, 0.18]) expect(Math.abs(crossInverse(liftCoefficient(s)) / s - 1 + 0.17)).toBeLessThan(0.015);
  });

  test('and with the same law gives the spin back (exact)', () => {
    for (const s of [0.05, 0.16, 0.4]) {
      expect(spinParameterForLift(liftCoefficient(s))).toBeCloseTo(s, 12);
      expect(crossInverse(crossLiftCoefficient(s))).toBeCloseTo(s, 12);
    }
  });

  test('because the law furthest from the default lies 12 to 8 % beside it in lift at S 0.14 to 0.2, where changeups live, and 5 % at 0.3 (computed independently)', () => {
    const furthest = (s: number): number => Math.max(...[sawickiLiftCoefficient, crossLiftCoefficient].map((law) => Math.abs(law(s) / liftCoefficient(s) - 1)));
    expect(furthest(0.14)).toBeCloseTo(0.12, 2);
    expect(furthest(0.2)).toBeCloseTo(0.085, 2);
    expect(furthest(0.3)).toBeCloseTo(0.045, 2);
  });
});

test('trap 2: the spin parameter of the total instead of the transverse spin makes 22 % too little lift at a gyro angle of 60° and S 0.2 (computed independently)', () => {
  const velocity: Vector = [0, -38, 0];
  const total = spinAxisFromTilt({ tiltRad: 0.7, efficiency: Math.cos(60 * degreeRad), spinRpm: 2000 });
  const s = (0.2 * norm(total)) / (spinParameterOf(total, velocity) / Math.cos(60 * degreeRad));
  const spin = scale(total, s / norm(total));
  expect(spinParameterOf(spin, velocity)).toBeCloseTo(0.1, 12);
  const asShipped = liftCoefficient(spinParameterOf(spin, velocity));
  const fromTotal = Math.cos(60 * degreeRad) * liftCoefficient(0.2);
  expect(fromTotal / asShipped - 1).toBeCloseTo(-0.22, 2);
});

test('trap 3: spin is an axial vector: mirrored it is (ωx, −ωy, −ωz), so that the mirrored spin pushes the mirrored ball to the mirrored side (exact)', () => {
  const spin = spinAxisFromTilt({ tiltRad: 1.1, efficiency: 0.8, spinRpm: 1800 });
  const velocity = [1.2, -37, -0.8] as const;
  expect(mirrorSpin(spin)).toEqual([spin[0], -spin[1], -spin[2]]);
  const pushed = cross(mirrorSpin(spin), mirrorVector(velocity));
  const mirrored = mirrorVector(cross(spin, velocity));
  expect(norm([pushed[0] - mirrored[0], pushed[1] - mirrored[1], pushed[2] - mirrored[2]])).toBeLessThan(1e-9);
  expect(tiltFromSpin(mirrorSpin(spin))!.tiltRad).toBeCloseTo(mirrorTilt(1.1), 12);
  const asIfPolar = cross(mirrorVector(spin), mirrorVector(velocity));
  expect(asIfPolar[2]).toBeCloseTo(-mirrored[2], 9); // what would rise sinks
});

describe('Trap 4: conventions of movement on one pitch', () => {
  // The nine-parameter pitch of Robinson & Kagan (teaching slides) and D. Kagan, Phys. Teach. 47:412, 2009: published.
  const feet = (x: number, y: number, z: number): Vector => scale([x, y, z], footM);
  const pitch = { positionM: feet(1.664, 50, 6.597), velocityMps: feet(-6.791, -123.055, -5.721), accelerationMps2: feet(13.233, 25.802, -17.54) };

  test('differ by 1.9× between from 55 ft and from 40 ft (computed independently)', () => {
    const ratio = inducedBreak(pitch, 55 * footM, plateYM)!.horizontalM / inducedBreak(pitch, 40 * footM, plateYM)!.horizontalM;
    expect(ratio).toBeCloseTo(1.9, 1);
  });

  test('and by 2.5 in of 18 between drag kept and drag removed (computed independently)', () => {
    const kept = inducedBreak(pitch, 55 * footM, plateYM)!.verticalM;
    const removed = transverseCoefficients(pitch, 55 * footM, 1.2, plateYM)!.magnusMovement.verticalM;
    expect((kept - removed) / inchM).toBeCloseTo(2.5, 1);
  });
});

test('trap 5: two pitches at the decision point are 2.2 in apart at the same time, which is what a batter sees, and 5.3 in at the same distance (computed independently; the pair is ours)', () => {
  const baseline = flyPitch(aimedOver(tailingFastball, 0.75), air);
  const thrown = flyPitch(aimedOver(changeup, 0.35), air);
  const [fast, slow] = [baseline, thrown].map(({ start, end }) => pathFromRelease(start, end)!);
  const timeS = baseline.end.timeS - 0.175;
  const there = baseline.positionAt(timeS);
  const apartIn = ([x, , z]: Vector): number => Math.hypot(x - there[0], z - there[2]) / inchM;
  const atTime = apartIn(thrown.positionAt(timeS));
  const atDistance = apartIn(flyPitch(aimedOver(changeup, 0.35), { ...air, until: { yM: there[1] } }).end.positionM);
  expect(atTime).toBeCloseTo(2.2, 1);
  expect(atDistance).toBeCloseTo(5.3, 0.5);
  for (const [basis, exactIn] of [['same-time', atTime], ['same-distance', atDistance]] as const) {
    const shown = apartAtDecision(slow!, fast!, { beforeS: 0.175, basis })!;
    expect(shown.basis).toBe(basis);
    expect(Math.abs(shown.acrossM / inchM - exactIn)).toBeLessThan(0.3);
  }
});

/** Aimed over the middle of the plate at a height, by turning its launch until it gets there. */
function aimedOver(pitch: PitchCard, zM: number): ReturnType<typeof launchOf> {
  let aim = pitch;
  for (let round = 0; round < 20; round += 1) {
    const [x, , z] = flyPitch(launchOf(aim), air).end.positionM;
    aim = { ...aim, elevationDeg: aim.elevationDeg + (zM - z) / 16.5 / degreeRad, azimuthDeg: aim.azimuthDeg - x / 16.5 / degreeRad };
  }
  return launchOf(aim);
}

test('trap 6: with hardly any acceleration along y the arrival time keeps all its digits, and the usual formula loses them (exact)', () => {
  const path = { positionM: [0, 50 * footM, 2] as Vector, velocityMps: [0, -40, 0] as Vector };
  const distanceM = 50 * footM - plateYM;
  const timeWith = (ay: number): number => timeAtY({ ...path, accelerationMps2: [0, ay, 0] }, plateYM)!;
  const usual = (ay: number): number => (40 - Math.sqrt(1600 - 2 * ay * distanceM)) / ay;
  const straight = distanceM / 40;
  expect(timeWith(0)).toBe(straight);
  expect(usual(0)).toBeNaN();
  for (const ay of [1e-6, 1e-9, 1e-12]) {
    const exact = straight * (1 + (ay * straight) / 80);
    expect(timeWith(ay) - straight).toBeGreaterThanOrEqual(0);
    expect(Math.abs(timeWith(ay) / exact - 1)).toBeLessThan(1e-13);
  }
  expect(Math.abs(usual(1e-12) / straight - 1)).toBeGreaterThan(1e-3);
});

describe.each([['a fastball', fastball], ['a fastball at 1:00', tailingFastball], ['a changeup', changeup]] as const)('Trap 7: %s at the plate', (_, pitch) => {
  const missM = (stepS: number): number => {
    const { nodes } = flyPitch(launchOf(pitch), { ...air, timeStepS: stepS, until: { yM: 0 } });
    const after = nodes.findIndex((node) => node.positionM[1] < plateYM);
    const [a, b] = [nodes[after - 1]!.positionM, nodes[after]!.positionM];
    const middle = flyPitch(launchOf(pitch), { ...air, timeStepS: stepS, until: { yM: (a[1] + b[1]) / 2 } }).end.positionM;
    expect(middle[1]).toBeCloseTo((a[1] + b[1]) / 2, 12);
    return Math.abs((a[2] + b[2]) / 2 - middle[2]);
  };

  test('by linear interpolation is up to 0.03 mm off inside a step of 5 ms, and 0.1 mm inside one of 10 ms (computed independently: a·h²/8)', () => {
    const [fine, coarse] = [missM(0.005) * 1000, missM(0.01) * 1000];
    expect(fine).toBeGreaterThan(0.005);
    expect(fine).toBeLessThan(0.035);
    expect(coarse / fine).toBeCloseTo(4, 0);
  });

  test('ends exactly on the front of it (exact)', () => {
    expect(flyPitch(launchOf(pitch), air).end.positionM[1]).toBeCloseTo(plateYM, 12);
  });
});
