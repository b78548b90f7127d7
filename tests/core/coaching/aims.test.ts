import { describe, expect, it } from 'vitest';
import { plateAim, plateWithin, tiltAim, tiltWithin } from '../../../core/coaching/aims.ts';
import { inchesToM } from '../../../core/units/convert.ts';

const fastball = { verticalM: inchesToM(16), armSideM: inchesToM(6) };
const zone = { verticalM: inchesToM(-10), armSideM: inchesToM(8) };
const hours = (rad: number): number => (rad * 6) / Math.PI;

describe('the aim of a changeup', () => {
  it('by tilt points along the movement that the zone asks for: 6 in up and 14 in to the arm side is 2:13', () => {
    expect(hours(tiltAim('turnover', 'right', fastball, zone)!.aimRad)).toBeCloseTo((Math.atan2(14, 6) * 6) / Math.PI, 9);
    expect(tiltAim('turnover', 'right', fastball, zone)!.giveRad).toBeCloseTo(Math.PI / 12, 12);
  });

  it('is on a left-hander’s clock as far from 12 the other way', () => {
    const right = hours(tiltAim('turnover', 'right', fastball, zone)!.aimRad);
    expect(hours(tiltAim('turnover', 'left', fastball, zone)!.aimRad)).toBeCloseTo(12 - right, 9);
  });

  it('follows the zone: farther to the arm side and lower is nearer to 3 o’clock', () => {
    const lower = tiltAim('turnover', 'right', fastball, { verticalM: inchesToM(-14), armSideM: inchesToM(10) })!;
    expect(lower.aimRad).toBeGreaterThan(tiltAim('turnover', 'right', fastball, zone)!.aimRad);
    expect(hours(lower.aimRad)).toBeLessThan(3);
  });

  it('has a tilt for a turnover only', () => {
    expect([tiltAim('seam-effect', 'right', fastball, zone), tiltAim('split', 'right', fastball, zone)]).toEqual([null, null]);
  });

  it('takes a tilt in as far as half an hour to either side, over 12 o’clock too', () => {
    const aim = { aimRad: Math.PI / 24, giveRad: Math.PI / 12 };
    const at = (hour: number): boolean => tiltWithin(aim, (hour * Math.PI) / 6);
    expect([11.7, 11.75, 0.25, 0.75, 0.8].map(at)).toEqual([false, true, true, true, false]);
  });

  it('at the plate is down, a turnover and a seam effect to the arm side and a split over the middle', () => {
    const [turnover, seam, split] = [plateAim('turnover'), plateAim('seam-effect'), plateAim('split')];
    expect(seam).toEqual(turnover);
    expect(turnover.armSideM + turnover.gloveSideM).toBeGreaterThan(0);
    expect(split.armSideM + split.gloveSideM).toBe(0);
    expect(split.highM).toBeLessThan(turnover.highM);
    expect(plateWithin(turnover, { heightM: inchesToM(20), armSideM: inchesToM(9) })).toBe(true);
    expect(plateWithin(turnover, { heightM: inchesToM(20), armSideM: inchesToM(-9) })).toBe(false);
    expect(plateWithin(turnover, { heightM: inchesToM(30), armSideM: 0 })).toBe(false);
  });
});
