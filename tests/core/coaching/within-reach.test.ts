import { expect, test } from 'vitest';
import { withinReach } from '../../../core/coaching/within-reach.ts';
import { missOf } from '../../../core/coaching/target.ts';
import { separationBySpin } from '../../../core/flight/arm.ts';
import { knownArm } from '../flight/arms.ts';
import { inchM } from '../flight/feet-and-miles.ts';

const arm = knownArm();
const zoneAt = (verticalIn: number, armSideIn: number) =>
  ({ kind: 'ellipse', verticalM: verticalIn * inchM, armSideM: armSideIn * inchM, verticalRadiusM: 2 * inchM, armSideRadiusM: 3 * inchM }) as const;
const lengthIn = ({ verticalM, armSideM }: { verticalM: number; armSideM: number }): number => Math.hypot(verticalM, armSideM) / inchM;

test('a zone within reach of the arm leaves nothing to a seam effect', () => {
  const { toCentre, toZone } = withinReach(arm, zoneAt(-10, 6))!;
  expect(lengthIn(toCentre.leftOver)).toBeLessThan(1e-3);
  expect(toZone.leftOver).toEqual({ verticalM: 0, armSideM: 0 });
});

test('a zone whose middle is out of reach but not its edge leaves something over only to the middle', () => {
  const { toCentre, toZone } = withinReach(arm, zoneAt(-6, 9.5))!;
  expect(lengthIn(toCentre.leftOver)).toBeGreaterThan(0.5);
  expect(missOf(toZone.separation, zoneAt(-6, 9.5)).onTarget).toBe(true);
  expect(toZone.leftOver).toEqual({ verticalM: 0, armSideM: 0 });
});

test('a zone out of reach says what a seam effect would have to add, and no throw of the arm gets nearer to it', () => {
  const zone = zoneAt(-16, -3);
  const { toCentre, toZone } = withinReach(arm, zone)!;
  const missedBy = missOf(toZone.separation, zone);
  expect(missedBy.onTarget).toBe(false);
  expect(lengthIn(toZone.leftOver)).toBeGreaterThan(0.2);
  expect(lengthIn(toZone.leftOver)).toBeLessThan(lengthIn(toCentre.leftOver));
  const added = { verticalM: toZone.separation.verticalM + toZone.leftOver.verticalM, armSideM: toZone.separation.armSideM + toZone.leftOver.armSideM };
  expect(Math.abs(missOf(added, zone).size)).toBeLessThan(1e-3);
  const { speedMps, spinRpm, efficiency } = arm;
  for (let hour = 0; hour < 12; hour += 0.25) {
    for (const [speed, spin, share] of [[speedMps.low, spinRpm.high, efficiency.high], [speedMps.high, spinRpm.low, efficiency.low], [speedMps.high, spinRpm.low, 0.7]] as const) {
      const other = separationBySpin(arm, { speedMps: speed, spinRpm: spin, efficiency: share, tiltRad: (hour * Math.PI) / 6, gyroSign: 1 })!;
      expect(missOf(other, zone).size).toBeGreaterThan(missedBy.size - 0.02);
    }
  }
});

test('nothing is told of an arm whose ball does not get to the plate', () => {
  expect(withinReach({ ...arm, direction: [0, 1, 0] }, zoneAt(-8, 4))).toBeNull();
});
