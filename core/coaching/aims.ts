import type { TargetZone } from '../facts/coach.ts';
import type { Family, Hand } from '../facts/vocabulary.ts';
import type { Separation } from '../flight/arm.ts';
import { tiltFromForce } from '../flight/spin.ts';
import { inchesToM } from '../units/convert.ts';

/** Clock seen by the pitcher, 0 = 12, clockwise, not mirrored, with the room about it either way. */
export interface TiltAim {
  readonly aimRad: number;
  readonly giveRad: number;
}

/** A region at the front of the plate: height over the ground, and arm side positive from its middle. */
export interface PlateRegion {
  readonly lowM: number;
  readonly highM: number;
  /** Both arm side positive: the gloveward edge, and the other. */
  readonly gloveSideM: number;
  readonly armSideM: number;
}

/** Half an hour of the clock. House rule. */
const TILT_GIVE_RAD = Math.PI / 12;

/**
 * Where the hour hand is to point for a zone: along the movement that its middle asks for, the fastball's and the separation
 * together. Only a turnover is aimed by tilt, because only there the spin does all the work; null for the others.
 * @param fastball movement of the baseline
 */
export function tiltAim(family: Family, hand: Hand, fastball: Separation, zone: Pick<TargetZone, 'verticalM' | 'armSideM'>): TiltAim | null {
  if (family !== 'turnover') return null;
  const armSideM = fastball.armSideM + zone.armSideM;
  return { aimRad: tiltFromForce(hand === 'right' ? -armSideM : armSideM, fastball.verticalM + zone.verticalM) ?? 0, giveRad: TILT_GIVE_RAD };
}

/** Down, a split over the middle and the others towards the arm side: common practice, for a batter of usual height. */
export function plateAim(family: Family): PlateRegion {
  return family === 'split'
    ? { lowM: inchesToM(10), highM: inchesToM(24), gloveSideM: inchesToM(-7), armSideM: inchesToM(7) }
    : { lowM: inchesToM(14), highM: inchesToM(27), gloveSideM: inchesToM(-3), armSideM: inchesToM(10) };
}

/** Whether a tilt lies in the room about its aim, the short way round. */
export function tiltWithin({ aimRad, giveRad }: TiltAim, tiltRad: number): boolean {
  return Math.cos(tiltRad - aimRad) >= Math.cos(giveRad) - 1e-12;
}

export function plateWithin({ lowM, highM, gloveSideM, armSideM }: PlateRegion, at: { readonly heightM: number; readonly armSideM: number }): boolean {
  return at.heightM >= lowM && at.heightM <= highM && at.armSideM >= gloveSideM && at.armSideM <= armSideM;
}
