import type { TargetZone } from '../facts/coach.ts';
import type { Arm } from '../flight/arm.ts';
import { nearestSpin, type NearestSpin } from '../flight/nearest-spin.ts';
import { missOf } from './target.ts';

export interface WithinReach {
  /** The spin that comes nearest to the middle of the zone, and what is left over to it. */
  readonly toCentre: NearestSpin;
  /** The spin that comes nearest to the zone, and what is left over to its edge: nothing where spin alone gets into it. */
  readonly toZone: NearestSpin;
}

const mostRounds = 30;
const closeEnoughM = 1e-5;

/**
 * What an arm would have to do to hit a target zone by spin alone, and how much a seam effect would have to add. The nearest spin is
 * looked for in turns: the point of the edge nearest to what was reached, then the spin nearest to that point.
 * Null when the arm's ball does not get to the plate.
 */
export function withinReach(arm: Arm, zone: TargetZone): WithinReach | null {
  const toCentre = nearestSpin(arm, zone);
  let toZone = toCentre;
  for (let round = 0; round < mostRounds && toCentre !== null && toZone !== null; round += 1) {
    const { separation } = toZone;
    const { onTarget, toEdgeVerticalM, toEdgeArmSideM } = missOf(separation, zone);
    if (onTarget) return { toCentre, toZone: { ...toZone, leftOver: { verticalM: 0, armSideM: 0 } } };
    const edge = { verticalM: separation.verticalM + toEdgeVerticalM, armSideM: separation.armSideM + toEdgeArmSideM };
    const next = nearestSpin(arm, edge);
    if (next === null) return null;
    toZone = next;
    if (Math.hypot(next.separation.verticalM - separation.verticalM, next.separation.armSideM - separation.armSideM) < closeEnoughM) break;
  }
  return toCentre === null || toZone === null ? null : { toCentre, toZone };
}
