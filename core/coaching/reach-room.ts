import type { Separation } from '../flight/arm.ts';
import type { ReachRegion } from '../flight/reach.ts';
import { nearestOnEdge, within } from './polygon.ts';

/** How far a place lies inside the reach, from its nearest edge; negative outside. */
export function insideBy(point: Separation, { outline, hole }: ReachRegion): number {
  const fromOutline = nearestOnEdge(point, outline).distanceM * (within(point, outline) ? 1 : -1);
  if (hole === null) return fromOutline;
  return Math.min(fromOutline, nearestOnEdge(point, hole).distanceM * (within(point, hole) ? -1 : 1));
}

/** From the nearest place that spin alone reaches to this one: what something else would have to add. Nothing inside. */
export function beyondReach(point: Separation, { outline, hole }: ReachRegion): Separation {
  const inHole = hole !== null && within(point, hole);
  if (within(point, outline) && !inHole) return { verticalM: 0, armSideM: 0 };
  const near = nearestOnEdge(point, inHole ? hole : outline).point;
  return { verticalM: point.verticalM - near.verticalM, armSideM: point.armSideM - near.armSideM };
}

/** Steps per side of the net that is searched, and how often it is drawn closer about the best place. */
const STEPS = 24;
const ROUNDS = 4;

/**
 * The place nearest to `wanted` about which a circle fits into the reach; null where none fits. A net is drawn over the
 * reach and then ever closer about the best place: to within a thousandth of the reach's size.
 */
export function roomNear(wanted: Separation, radiusM: number, reach: ReachRegion): Separation | null {
  if (insideBy(wanted, reach) >= radiusM) return wanted;
  let best: Separation | null = null;
  let net = boundsOf(reach.outline);
  for (let round = 0; round < ROUNDS; round += 1) {
    best = nearestFitting(wanted, radiusM, reach, net) ?? best;
    if (best === null) return null;
    net = { ...best, halfVerticalM: (2 * net.halfVerticalM) / STEPS, halfArmSideM: (2 * net.halfArmSideM) / STEPS };
  }
  return best;
}

interface Net extends Separation {
  readonly halfVerticalM: number;
  readonly halfArmSideM: number;
}

function boundsOf(outline: readonly Separation[]): Net {
  const vertical = outline.map(({ verticalM }) => verticalM);
  const side = outline.map(({ armSideM }) => armSideM);
  const [low, high, left, right] = [Math.min(...vertical), Math.max(...vertical), Math.min(...side), Math.max(...side)];
  return { verticalM: (low + high) / 2, armSideM: (left + right) / 2, halfVerticalM: (high - low) / 2, halfArmSideM: (right - left) / 2 };
}

function nearestFitting(wanted: Separation, radiusM: number, reach: ReachRegion, net: Net): Separation | null {
  let best: { readonly point: Separation; readonly distanceM: number } | null = null;
  for (let up = -STEPS; up <= STEPS; up += 2) {
    for (let side = -STEPS; side <= STEPS; side += 2) {
      const point = { verticalM: net.verticalM + (up / STEPS) * net.halfVerticalM, armSideM: net.armSideM + (side / STEPS) * net.halfArmSideM };
      const distanceM = Math.hypot(point.verticalM - wanted.verticalM, point.armSideM - wanted.armSideM);
      if ((best === null || distanceM < best.distanceM) && insideBy(point, reach) >= radiusM) best = { point, distanceM };
    }
  }
  return best?.point ?? null;
}
