import { describe, expect, it } from 'vitest';
import type { ThrowBody } from '../../../core/facts/frames.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { inducedBreakBetween } from '../../../core/flight/movement.ts';
import { spinAxisFromTilt } from '../../../core/flight/spin.ts';
import { analyseThrow } from '../../../core/session/analyse.ts';
import { degToRad, feetToM, inchesToM, mphToMps, radToDeg } from '../../../core/units/convert.ts';

const units = { distance: 'm', speed: 'm/s', movement: 'm' } as const;
const seen = { sight: 'full-flight', axis: 'measured', units } as const;
const mound = { hand: 'right', stage: 'mound', distanceM: feetToM(60.5) } as const;

/** A right-hander's changeup of 84 mph flown with the exact equations, seen without noise 100 times. */
function flown(): { body: ThrowBody; verticalM: number; armSideM: number; plateHeightM: number; plateSpeedMps: number; rightApproachRad: number } {
  const spin = { tiltRad: degToRad(60), efficiency: 0.9, spinRpm: 1800 };
  const velocityMps = [1.2, -mphToMps(84), -0.6] as const;
  const spinRadps = spinAxisFromTilt({ ...spin, velocityMps });
  const flight = flyPitch({ positionM: [-0.6, feetToM(54.5), 1.8], velocityMps, spinRadps }, { airDensityKgM3: 1.2 });
  const path = Array.from({ length: 100 }, (_, i) => {
    const timeS = (flight.end.timeS * i) / 99;
    const [x, y, z] = flight.positionAt(timeS);
    return [timeS, x, y, z] as [number, number, number, number];
  });
  const moved = inducedBreakBetween(flight.start, flight.end);
  const [vx, vy, vz] = flight.end.velocityMps;
  return {
    body: { path, spin: { rate: 1800, axis: [...spinRadps] as [number, number, number] }, extension: feetToM(6) },
    verticalM: moved.verticalM, armSideM: -moved.horizontalM, plateHeightM: flight.end.positionM[2],
    plateSpeedMps: Math.hypot(vx, vy, vz), rightApproachRad: Math.atan2(vx, -vy),
  };
}

describe('a throw seen as a path', () => {
  it('is read as it was flown: break within a tenth of an inch, tilt and efficiency as given', () => {
    const truth = flown();
    const read = analyseThrow(truth.body, seen, mound);
    expect(read.problem).toBeNull();
    expect(Math.abs((read.verticalM as number) - truth.verticalM)).toBeLessThan(inchesToM(0.1));
    expect(Math.abs((read.armSideM as number) - truth.armSideM)).toBeLessThan(inchesToM(0.1));
    expect(read.plateHeightM as number).toBeCloseTo(truth.plateHeightM, 3);
    expect(radToDeg(read.tiltRad as number)).toBeCloseTo(60, 1);
    expect(read.efficiency as number).toBeCloseTo(0.9, 3);
    expect(read.armSideM as number).toBeGreaterThan(0);
  });

  it('tells speed and angles at the plate, the angle across it positive towards the arm side of either hand', () => {
    const { body, plateSpeedMps, rightApproachRad } = flown();
    const right = analyseThrow(body, seen, mound);
    const left = analyseThrow(body, seen, { ...mound, hand: 'left' });
    expect(right.plateSpeedMps as number).toBeCloseTo(plateSpeedMps, 3);
    expect(right.horizontalApproachRad as number).toBeCloseTo(-rightApproachRad, 4);
    expect(left.horizontalApproachRad).toBe(-(right.horizontalApproachRad as number));
    expect(analyseThrow(body, seen, { ...mound, hand: null }).horizontalApproachRad).toBe('not-defined');
  });

  it('tells a gyro angle with its sign, as the eye sees it, and the extension that was measured', () => {
    const read = analyseThrow(flown().body, seen, mound);
    // 1800 rpm at an efficiency of 0.9, the part along the flight pointing at the plate.
    expect(read.gyroRad as number).toBeCloseTo(Math.acos(0.9), 3);
    expect(analyseThrow(flown().body, seen, { ...mound, hand: 'left' }).gyroRad).toBe(read.gyroRad);
    expect(read.extensionM as number).toBeCloseTo(feetToM(6), 12);
  });

  it('has no plate in catch play: neither speed nor angles there', () => {
    expect(analyseThrow(flown().body, seen, { ...mound, stage: 'catch-play' })).toMatchObject({ plateSpeedMps: 'not-defined', horizontalApproachRad: 'not-defined', verticalApproachRad: 'not-defined' });
  });

  it('carries a standard error for every reading of the path, larger where the samples scatter more', () => {
    const { body } = flown();
    const scattered = (byM: number): ThrowBody => ({ ...body, path: body.path!.map(([t, x, y, z], i) => [t, x + byM * Math.sin(i * 2.3), y, z + byM * Math.cos(i * 3.1)] as [number, number, number, number]) });
    const [fine, coarse] = [0.002, 0.006].map((byM) => analyseThrow(scattered(byM), seen, mound).standardErrors!);
    expect(Object.keys(fine!)).toHaveLength(11);
    const notLarger = Object.entries(coarse!).filter(([reading, error]) => !(error > fine![reading as keyof typeof fine]!));
    expect(notLarger).toEqual([]);
  });

  it('that no flight could leave is a problem with a sentence, never a number', () => {
    const path = flown().body.path!.map(([t, x, y, z], i) => [t, x + (i % 2 === 0 ? 1 : -1) * 0.9, y, z] as [number, number, number, number]);
    const read = analyseThrow({ path }, seen, mound);
    expect(read.problem).toMatch(/\w+ \w+ \w+/);
    expect(read.verticalM).toBe('problem');
  });
});

describe('a throw seen as constant acceleration', () => {
  // Worked by hand in feet and seconds: straight at 120 ft/s without drag, from 55 ft to 17 in takes (55 − 17/12)/120 s.
  it('gives flight time, break and plate place by the formulas of a parabola', () => {
    const g = 9.80665 / 0.3048;
    const feet = { distance: 'ft', speed: 'mph', movement: 'in' } as const;
    const read = analyseThrow(
      { constant: { start: [-2, 55, 6], velocity: [0, -120, 0], acceleration: [-8, 0, 10 - g], distance: 55 } },
      { ...seen, units: feet }, mound,
    );
    const t = (55 - 17 / 12) / 120;
    expect(read.flightTimeS as number).toBeCloseTo(t, 9);
    expect(read.verticalM as number).toBeCloseTo(feetToM(5 * t * t), 9);
    expect(read.armSideM as number).toBeCloseTo(feetToM(4 * t * t), 9);
    expect(read.plateHeightM as number).toBeCloseTo(feetToM(6 + ((10 - g) * t * t) / 2), 9);
    expect(read.plateRightM as number).toBeCloseTo(feetToM(-2 - 4 * t * t), 9);
  });
});

describe('a spin-only device', () => {
  const spinOnly = { sight: 'spin-only', axis: 'inferred', units: { distance: 'ft', speed: 'mph', movement: 'in' } } as const;
  it('has its movement inferred from spin, and marked so', () => {
    const read = analyseThrow({ summary: { releaseSpeed: 84 }, spin: { rate: 1800, tilt: 60, efficiency: 0.95 } }, spinOnly, mound);
    expect(read.inferred).toBe(true);
    // Tilt and efficiency leave open which way the spin along the flight turns.
    expect(read).toMatchObject({ gyroRad: 'not-sent', extensionM: 'not-sent', plateSpeedMps: 'not-sent', horizontalApproachRad: 'not-sent' });
    expect(read.verticalM as number).toBeGreaterThan(0);
    expect(read.armSideM as number).toBeGreaterThan(read.verticalM as number);
  });
  it('without an axis cannot see movement, and says so', () => {
    const read = analyseThrow({ summary: { releaseSpeed: 84 }, spin: { rate: 1800 } }, { ...spinOnly, axis: 'none' }, mound);
    expect(read).toMatchObject({ verticalM: 'not-visible', armSideM: 'not-visible', tiltRad: 'not-visible', efficiency: 'not-visible' });
  });
});

describe('the flight time of a throw', () => {
  const summary = { releaseSpeed: 84 } as const;
  const device = { sight: 'full-flight', axis: 'measured', units: { distance: 'ft', speed: 'mph', movement: 'in' } } as const;
  it.each([
    ['the path that was seen', flown().body, 'path'],
    ['the device’s own word', { summary: { ...summary, flightTime: 0.45 }, spin: { rate: 1800, tilt: 60, efficiency: 0.95 } }, 'device'],
    ['a flight by its spin', { summary, spin: { rate: 1800, tilt: 60, efficiency: 0.95 } }, 'spin'],
    ['no more than its speed', { summary }, 'speed'],
  ] as const)('rests on %s, and says so', (_, body, from) => {
    const read = analyseThrow(body as ThrowBody, from === 'path' ? seen : device, mound);
    expect(read.flightTimeFrom).toBe(from);
    expect(read.flightTimeS as number).toBeGreaterThan(0.43);
    expect(read.flightTimeS as number).toBeLessThan(0.48);
  });
});
