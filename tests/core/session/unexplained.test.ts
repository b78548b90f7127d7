import { describe, expect, it } from 'vitest';
import type { MoundAir } from '../../../core/facts/air-says.ts';
import type { ThrowBody } from '../../../core/facts/frames.ts';
import type { UnexplainedReading, UnexplainedView } from '../../../core/facts/views.ts';
import { airDensityAt } from '../../../core/flight/air.ts';
import { analyseThrow, type Circumstances } from '../../../core/session/analyse.ts';
import type { Seer } from '../../../core/session/seer.ts';
import { moundView } from '../../../core/session/view.ts';
import { degToRad, feetToM, inchesToM, mToInches, radToDeg } from '../../../core/units/convert.ts';
import { bodyOf, constantOf, EFFICIENCY, flownChangeup, pathOf, SPIN_RPM, TILT_DEG, UNITS } from './flown-body.ts';
import { Story } from './story.ts';

const SEER: Seer = { sight: 'full-flight', axis: 'measured', units: UNITS };
const MOUND: Circumstances = { hand: 'right', stage: 'mound', distanceM: feetToM(60.5) };
const HANDS = ['right', 'left'] as const;
/** 0.01 is 0.927 in over 53.583 ft at any speed, computed independently; release to the front of the plate is a little less here. */
const SEAM = { armSide: 0.03, up: -0.02 } as const;
const INCHES_PER_HUNDREDTH = (0.927 * (54.5 - 17 / 12) ** 2) / 53.583 ** 2;

function numbers(reading: UnexplainedReading): UnexplainedView {
  if (reading.kind !== 'unexplained') throw new Error(`unexplained movement is ${reading.kind}`);
  return reading;
}
const unexplainedOf = (body: ThrowBody, seer: Seer = SEER, circumstances: Circumstances = MOUND): UnexplainedReading => analyseThrow(body, seer, circumstances).unexplained;

describe.each(HANDS)('a %s-hander’s changeup seen in flight, with its axis measured', (hand) => {
  const circumstances = { ...MOUND, hand };

  it('that the seams push to the arm side and down shows both, as large as they are', () => {
    const read = numbers(unexplainedOf(bodyOf(hand, { seam: SEAM }), SEER, circumstances));
    expect(mToInches(read.armSideM) / (3 * INCHES_PER_HUNDREDTH)).toBeCloseTo(1, 1);
    expect(mToInches(read.verticalM) / (-2 * INCHES_PER_HUNDREDTH)).toBeCloseTo(1, 1);
  });

  it('has a part across its spin that is the push turned by the tilt, arm side positive', () => {
    const read = numbers(unexplainedOf(bodyOf(hand, { seam: SEAM }), SEER, circumstances));
    const tilt = degToRad(TILT_DEG);
    const hundredths = 3 * Math.cos(tilt) + 2 * Math.sin(tilt);
    expect(mToInches(read.acrossM!) / (hundredths * INCHES_PER_HUNDREDTH)).toBeCloseTo(1, 1);
    expect(mToInches(read.pushM!)).toBeGreaterThan(12);
  });

  it('that no seam pushes leaves nothing over', () => {
    const read = numbers(unexplainedOf(bodyOf(hand), SEER, circumstances));
    expect(Math.abs(mToInches(read.verticalM))).toBeLessThan(0.05);
    expect(Math.abs(mToInches(read.armSideM))).toBeLessThan(0.05);
    expect(Math.abs(mToInches(read.acrossM!))).toBeLessThan(0.05);
    expect(read.spinArmSideM).toBeGreaterThan(read.spinVerticalM);
  });

  it('has what the spin explains and what it does not add up to the break that is shown', () => {
    const read = analyseThrow(bodyOf(hand, { seam: SEAM }), SEER, circumstances);
    const { spinVerticalM, spinArmSideM, verticalM, armSideM } = numbers(read.unexplained);
    expect(spinVerticalM + verticalM).toBeCloseTo(read.verticalM as number, 9);
    expect(spinArmSideM + armSideM).toBeCloseTo(read.armSideM as number, 9);
  });

  it('shows the same told as constant acceleration', () => {
    const { flight, spinRadps } = flownChangeup(hand, { seam: SEAM });
    const body: ThrowBody = { constant: constantOf(flight), spin: { rate: SPIN_RPM, axis: [...spinRadps] as [number, number, number] }, extension: feetToM(6) };
    expect(mToInches(numbers(unexplainedOf(body, SEER, circumstances)).armSideM) / (3 * INCHES_PER_HUNDREDTH)).toBeCloseTo(1, 1);
  });

  it('has a doubt of the lift laws that lies along its spin, up and to the arm side together', () => {
    const [vertical, both, armSide] = numbers(unexplainedOf(bodyOf(hand), SEER, circumstances)).model;
    expect(both).toBeGreaterThan(0);
    expect(both / Math.sqrt(vertical * armSide)).toBeGreaterThan(0.9);
  });
});

describe('how sure unexplained movement is', () => {
  it('is not told for a device that does not say how sure its spin is', () => {
    expect(numbers(unexplainedOf(bodyOf('right'))).measurement).toBeNull();
  });

  it('grows with the error of the axis: a degree of tilt over 15 in is a quarter of an inch across', () => {
    const declared = (tilt: number): Seer => ({ ...SEER, standardErrors: { spinRate: 15, tilt } });
    const across = (tilt: number): number => {
      const { measurement, pushM } = numbers(unexplainedOf(bodyOf('right'), declared(tilt)));
      const [vertical, both, armSide] = measurement!;
      const [up, side] = [Math.sin(degToRad(TILT_DEG)), Math.cos(degToRad(TILT_DEG))];
      return Math.sqrt(up * up * vertical - 2 * up * side * both + side * side * armSide) / pushM!;
    };
    expect(radToDeg(across(1))).toBeCloseTo(1, 1);
    expect(radToDeg(across(3))).toBeCloseTo(3, 0);
  });

  it('needs the error of a break from a device that sends constant acceleration', () => {
    const { flight, spinRadps } = flownChangeup('right');
    const body: ThrowBody = { constant: constantOf(flight), spin: { rate: SPIN_RPM, axis: [...spinRadps] as [number, number, number] }, extension: feetToM(6) };
    expect(numbers(unexplainedOf(body, { ...SEER, standardErrors: { spinRate: 15, tilt: 1 } })).measurement).toBeNull();
    expect(numbers(unexplainedOf(body, { ...SEER, standardErrors: { spinRate: 15, tilt: 1, movement: 0.01 } })).measurement![0]).toBeGreaterThan(1e-4);
  });
});

describe('a device that cannot show unexplained movement', () => {
  const summary: ThrowBody = { summary: { releaseSpeed: 37.5 }, spin: { rate: 1800, tilt: 60, efficiency: 0.9 } };
  it.each([
    ['sees only spin', { ...SEER, sight: 'spin-only' }, summary, 'spin-only'],
    ['sees only spin, even where it sends a path', { ...SEER, sight: 'spin-only' }, bodyOf('right'), 'spin-only'],
    ['infers its axis', { ...SEER, axis: 'inferred' }, bodyOf('right'), 'axis-inferred'],
    ['knows no axis', { ...SEER, axis: 'none' }, { path: bodyOf('right').path!, spin: { rate: 1800 } }, 'no-axis'],
  ] as const)('because it %s says so of every throw', (_, seer, body, reason) => {
    expect(unexplainedOf(body, seer as Seer)).toEqual({ kind: 'not-visible', reason });
    expect(unexplainedOf(body, seer as Seer, { ...MOUND, stage: 'catch-play', hand: null })).toEqual({ kind: 'not-visible', reason });
  });
});

describe('a device that could have shown unexplained movement', () => {
  it.each([
    ['no axis', { path: bodyOf('right').path!, spin: { rate: 1800 } }],
    ['a tilt alone', { path: bodyOf('right').path!, spin: { rate: 1800, tilt: 60 } }],
    ['no spin', { path: bodyOf('right').path! }],
    ['no path', { summary: { releaseSpeed: 37.5, verticalBreak: 0.2, horizontalBreak: -0.3 }, spin: { rate: 1800, tilt: 60, efficiency: 0.9 } }],
  ] as const)('and sent %s is said not to have sent it, which is not the same as not seeing it', (_, body) => {
    expect(unexplainedOf(body as ThrowBody)).toEqual({ kind: 'not-sent' });
  });

  it('of a throw that contradicts itself says that it is a problem', () => {
    expect(unexplainedOf({ constant: { start: [0, 16, 1.8], velocity: [0, -20, 0], acceleration: [0, 30, -9.8], distance: 16 }, spin: { rate: 1800, axis: [-1, 0, 0] } })).toEqual({ kind: 'problem' });
  });

  it('has no arm side to tell it by while nobody has claimed the throw', () => {
    expect(unexplainedOf(bodyOf('right'), SEER, { ...MOUND, hand: null })).toEqual({ kind: 'not-defined' });
  });
});

describe('a spin of which only the rate was sent', () => {
  const { flight } = flownChangeup('right');
  it.each([['a path', { path: pathOf(flight) }], ['constant acceleration', { constant: constantOf(flight) }]])('has tilt and efficiency filled in from %s, and marked inferred', (_, shape) => {
    const read = analyseThrow({ ...shape, spin: { rate: SPIN_RPM }, extension: feetToM(6) }, SEER, MOUND);
    expect(read.spinFrom).toBe('inferred');
    expect(radToDeg(read.tiltRad as number)).toBeCloseTo(TILT_DEG, -0.5);
    expect(Math.abs((read.efficiency as number) - EFFICIENCY)).toBeLessThan(0.03);
  });

  it('stays alone where no path was seen', () => {
    const read = analyseThrow({ summary: { releaseSpeed: 37.5 }, spin: { rate: SPIN_RPM } }, SEER, MOUND);
    expect(read).toMatchObject({ spinFrom: null, tiltRad: 'not-sent', efficiency: 'not-sent' });
  });

  it('keeps a measured tilt when the efficiency is filled in, and is no longer called measured', () => {
    const read = analyseThrow({ path: pathOf(flight), spin: { rate: SPIN_RPM, tilt: 57 }, extension: feetToM(6) }, SEER, MOUND);
    expect(radToDeg(read.tiltRad as number)).toBeCloseTo(57, 9);
    expect(read.spinFrom).toBe('inferred');
  });
});

describe('the air of the mound', () => {
  const high: MoundAir = { where: 'outdoors', temperatureC: 31, relativeHumidity: 0.4, height: { kind: 'altitude', altitudeM: 1610 }, wind: null };
  const airDensityKgM3 = airDensityAt({ temperatureC: 31, relativeHumidity: 0.4, altitudeM: 1610 });

  it('is what a throw is read in: a spin in thin air is not taken for a push against it', () => {
    const body = bodyOf('right', { airDensityKgM3 });
    const apart = (air: MoundAir | null): number => {
      const { verticalM, armSideM } = numbers(unexplainedOf(body, SEER, { ...MOUND, air }));
      return mToInches(Math.hypot(verticalM, armSideM));
    };
    expect(apart(high)).toBeLessThan(0.05);
    expect(apart(null)).toBeGreaterThan(1.5);
  });

  it('has a wind that is flown with: towards the catcher’s right and towards the plate', () => {
    const wind = { towardsPlateMps: 1, towardsRightMps: 3 };
    const body = bodyOf('right', { airDensityKgM3, windMps: [3, -1, 0] });
    const across = (air: MoundAir): number => Math.abs(mToInches(numbers(unexplainedOf(body, SEER, { ...MOUND, air })).acrossM!));
    expect(across({ ...high, wind })).toBeLessThan(0.05);
    expect(across(high)).toBeGreaterThan(0.4);
    expect(across({ ...high, wind, where: 'indoors' })).toBe(across(high));
  });
});

describe('the seams that a device tells', () => {
  it('are shown as they were sent', () => {
    expect(analyseThrow({ ...bodyOf('right'), seams: { latitude: 12, longitude: -40 } }, SEER, MOUND).seamAxis).toEqual({ latitudeDeg: 12, longitudeDeg: -40 });
    expect(analyseThrow(bodyOf('right'), SEER, MOUND).seamAxis).toBeNull();
  });
});

describe('a throw in a view', () => {
  it('that is corrected is read anew', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'changeup');
    const place = story.measured(bodyOf('right'));
    const shown = (): UnexplainedView => numbers(moundView(story.ledger(), null).throws.find((thrown) => thrown.place === place)!.unexplained);
    expect(Math.abs(shown().armSideM)).toBeLessThan(inchesToM(0.1));
    story.correct(1, bodyOf('right', { seam: SEAM }));
    expect(shown().armSideM).toBeGreaterThan(inchesToM(2));
  });

  it('that is moved to a left-hander is told by that arm side', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'changeup');
    const place = story.measured(bodyOf('right', { seam: SEAM }));
    const right = numbers(moundView(story.ledger(), 's1').throws[0]!.unexplained);
    story.open('s2', 'bo', 'left').say({ kind: 'throws-moved', places: [place], session: 's2' });
    const left = numbers(moundView(story.ledger(), 's2').throws[0]!.unexplained);
    expect(left.armSideM).toBeCloseTo(-right.armSideM, 9);
    expect(left.acrossM).toBeCloseTo(-right.acrossM!, 9);
    expect(left.verticalM).toBe(right.verticalM);
  });

  it('keeps the air that it was thrown in', () => {
    const air: MoundAir = { where: 'indoors', temperatureC: 35, relativeHumidity: 0.5, height: { kind: 'altitude', altitudeM: 1600 }, wind: null };
    const body = bodyOf('right');
    const story = new Story().open('s1', 'ada').intent('s1', 'changeup');
    story.measured(body);
    story.say({ kind: 'air-set', air });
    story.measured(body);
    const [before, after] = moundView(story.ledger(), null).throws.map(({ unexplained }) => numbers(unexplained).pushM!);
    expect(after! / before!).toBeLessThan(0.85);
  });
});
