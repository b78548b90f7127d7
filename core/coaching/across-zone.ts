import type { TargetZone } from '../facts/coach.ts';
import type { Separation } from '../flight/arm.ts';
import { tallyOf } from '../statistics/tally.ts';
import { missOf } from './target.ts';

/** Misses on a side from which it is no accident. House rule. */
const FEWEST_ON_A_SIDE = 2;

/**
 * Why the miss may not see a shift between two trials; null when it does.
 * - `between`: the zone lies between their centres, so throws went across it and missed by as much on the other side
 * - `both-sides`: both trials miss to opposite sides of it, above and below or arm side and glove side
 */
export type AcrossZone = 'between' | 'both-sides' | null;

/** Whether the zone is straddled by two trials; both hold a throw at least. */
export function acrossZone(a: readonly Separation[], b: readonly Separation[], zone: TargetZone): AcrossZone {
  if (liesBetween(centreOf(a), centreOf(b), zone)) return 'between';
  const [sidesA, sidesB] = [sidesOf(a, zone), sidesOf(b, zone)];
  const both = (axis: keyof Sides): boolean => [sidesA, sidesB].every((sides) => Math.min(...sides[axis]) >= FEWEST_ON_A_SIDE);
  return both('vertical') || both('armSide') ? 'both-sides' : null;
}

const centreOf = (places: readonly Separation[]): Separation => ({
  verticalM: tallyOf(places.map(({ verticalM }) => verticalM)).mean,
  armSideM: tallyOf(places.map(({ armSideM }) => armSideM)).mean,
});

/** Both centres nearer to its edge than to each other across it: opposite halves, beyond half its radius each, in its own shape. */
function liesBetween(a: Separation, b: Separation, zone: TargetZone): boolean {
  const [ax, ay] = inZone(a, zone);
  const [bx, by] = inZone(b, zone);
  if (ax * bx + ay * by >= 0 || Math.min(Math.hypot(ax, ay), Math.hypot(bx, by)) < 0.5) return false;
  // Distance of the zone's centre from the line through both.
  return Math.abs(ax * by - ay * bx) / Math.hypot(bx - ax, by - ay) < 1;
}

/** In radii of the zone about its centre. */
const inZone = ({ verticalM, armSideM }: Separation, zone: TargetZone): readonly [number, number] => [
  (armSideM - zone.armSideM) / zone.armSideRadiusM,
  (verticalM - zone.verticalM) / zone.verticalRadiusM,
];

interface Sides {
  readonly vertical: readonly [below: number, above: number];
  readonly armSide: readonly [glove: number, arm: number];
}

/** Of the throws outside: how many lack most to which side. */
function sidesOf(places: readonly Separation[], zone: TargetZone): Sides {
  const outside = places.map((place) => missOf(place, zone)).filter(({ onTarget }) => !onTarget);
  const upright = outside.filter(({ toEdgeVerticalM, toEdgeArmSideM }) => Math.abs(toEdgeVerticalM) >= Math.abs(toEdgeArmSideM));
  const sideways = outside.filter((miss) => !upright.includes(miss));
  const above = upright.filter(({ toEdgeVerticalM }) => toEdgeVerticalM < 0).length;
  const arm = sideways.filter(({ toEdgeArmSideM }) => toEdgeArmSideM < 0).length;
  return { vertical: [upright.length - above, above], armSide: [sideways.length - arm, arm] };
}
