import { describe, expect, it } from 'vitest';
import { proposeTarget, type TargetInput } from '../../../core/coaching/propose-target.ts';
import { insideBy } from '../../../core/coaching/reach-room.ts';
import type { Family } from '../../../core/facts/vocabulary.ts';
import { armFromFastball } from '../../../core/flight/arm.ts';
import { reachRegion, type ReachRegion } from '../../../core/flight/reach.ts';
import { feetToM, inchesToM, mphToMps, mpsToMph, mToInches } from '../../../core/units/convert.ts';

const fastball = { verticalM: inchesToM(16), armSideM: inchesToM(6), speedMps: mphToMps(90) };
/** Within reach of a real arm: everything within 6 to 17 in of movement. */
const ring = (least: number, most: number): ReachRegion => {
  const about = (inches: number) => Array.from({ length: 64 }, (_, corner) => ({
    verticalM: inchesToM(inches * Math.cos((corner / 32) * Math.PI)) - fastball.verticalM,
    armSideM: inchesToM(inches * Math.sin((corner / 32) * Math.PI)) - fastball.armSideM,
  }));
  return { outline: about(most), hole: least === 0 ? null : about(least) };
};
const propose = (family: Family, more: Partial<TargetInput> = {}) => proposeTarget({ family, mainFastball: 'four-seam', fastball, reach: ring(6, 20), ...more });
const codes = (found: ReturnType<typeof propose>): string[] => found.reasons.map(({ code }) => code);

describe('a proposed target', () => {
  it('of a turnover lies below the fastball and to the arm side, where spin alone gets it', () => {
    const { zone, remainder, reasons } = propose('turnover');
    expect([mToInches(zone.verticalM), mToInches(zone.armSideM)]).toEqual([expect.closeTo(-10, 6), expect.closeTo(8, 6)]);
    expect(insideBy(zone, ring(6, 20))).toBeGreaterThanOrEqual(zone.verticalRadiusM);
    expect(remainder).toEqual({ verticalM: 0, armSideM: 0 });
    expect(reasons[0]).toMatchObject({ code: 'usual-movement', numbers: { verticalM: inchesToM(6) } });
  });

  it.each([[6, 17], [6, 15], [0, 15], [12.5, 18.5]])('of a turnover is drawn wholly into a reach from %d to %d in of movement', (least, most) => {
    const reach = ring(least, most);
    const found = propose('turnover', { reach });
    expect(codes(found)).toContain('drawn-into-reach');
    expect(insideBy(found.zone, reach)).toBeGreaterThanOrEqual(found.zone.verticalRadiusM - 1e-9);
  });

  it('becomes smaller before it gives up, never smaller than what matters, and says each', () => {
    expect(codes(propose('turnover', { reach: ring(12, 16.6) }))).toContain('smaller-to-fit-reach');
    const none = propose('turnover', { reach: ring(15, 17) });
    expect(codes(none)).toContain('no-room-within-reach');
    expect(mToInches(none.zone.verticalRadiusM)).toBeCloseTo(2, 9);
  });

  it('within the reach of a real arm stays in it', () => {
    const arm = armFromFastball({ ...fastball, releaseM: [-0.5, feetToM(55), 1.8], velocityMps: [0.5, -mphToMps(90), -1.5], plate: { xM: 0, zM: inchesToM(30) } }, { efficiency: { low: 0.5, high: 1 } });
    const reach = reachRegion(arm)!;
    const { zone } = propose('turnover', { reach });
    expect(insideBy(zone, reach)).toBeGreaterThanOrEqual(zone.verticalRadiusM - 1e-9);
    expect(zone.verticalM).toBeLessThan(inchesToM(-4));
  });

  it('of a seam-effect changeup may lie beyond the reach of spin, and says what is left to the seam', () => {
    const found = propose('seam-effect', { reach: ring(0, 10) });
    const left = found.reasons.find(({ code }) => code === 'leaves-to-seam-effect');
    expect(Math.hypot(left!.numbers.verticalM!, left!.numbers.armSideM!)).toBeCloseTo(Math.hypot(inchesToM(4), inchesToM(13)) - inchesToM(10), 3);
    expect(found.remainder).toEqual(left!.numbers);
    expect(codes(propose('split', { reach: ring(0, 5) }))).toContain('leaves-to-split');
  });

  it('without a known reach says so', () => {
    expect(codes(propose('turnover', { reach: null }))).toContain('reach-unknown');
  });

  it('asks for about ten miles an hour less of a 90 mph turnover, and for less of a slower arm', () => {
    const { speedBand } = propose('turnover');
    expect(mpsToMph((speedBand.lowMps + speedBand.highMps) / 2)).toBeCloseTo(-9.9, 6);
    const slower = propose('turnover', { fastball: { ...fastball, speedMps: mphToMps(65) } }).speedBand;
    expect(slower.lowMps).toBeCloseTo((speedBand.lowMps * 65) / 90, 9);
  });

  it('beside a sinker has little vertical room, says that the speed gap carries it, and still lies below', () => {
    const sinker = propose('turnover', { mainFastball: 'sinker', fastball: { verticalM: inchesToM(8), armSideM: inchesToM(15), speedMps: mphToMps(90) }, reach: null });
    expect(codes(sinker)).toEqual(expect.arrayContaining(['little-vertical-room', 'gap-carries-it']));
    expect(mToInches(sinker.zone.verticalM)).toBeCloseTo(-3, 9);
    expect(sinker.zone.armSideM).toBe(0);
  });
});
