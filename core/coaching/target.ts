import type { TargetZone } from '../facts/coach.ts';
import { inchesToM } from '../units/convert.ts';

/** Smallest difference that matters, the same for both axes, so that a miss of 1 is this far. House rule, unvalidated. */
export const MISS_OF_ONE_M = inchesToM(2);
const SMALLEST_VERTICAL_M = MISS_OF_ONE_M;
const SMALLEST_ARM_SIDE_M = MISS_OF_ONE_M;

export interface Miss {
  readonly onTarget: boolean;
  /** Signed distance to the edge in smallest differences that matter; negative inside. */
  readonly size: number;
  /** From the throw to the nearest point of the edge, metres. */
  readonly toEdgeVerticalM: number;
  readonly toEdgeArmSideM: number;
}

/**
 * How far a separation lies from the edge of the target zone. Both axes are first divided by the smallest difference
 * that matters, then the Euclidean distance to the nearest point of the ellipse is taken.
 */
export function missOf(separation: { readonly verticalM: number; readonly armSideM: number }, zone: TargetZone): Miss {
  const vertical = (separation.verticalM - zone.verticalM) / SMALLEST_VERTICAL_M;
  const side = (separation.armSideM - zone.armSideM) / SMALLEST_ARM_SIDE_M;
  const a = zone.armSideRadiusM / SMALLEST_ARM_SIDE_M;
  const b = zone.verticalRadiusM / SMALLEST_VERTICAL_M;
  const [nearSide, nearVertical] = nearestOnEllipse(side, vertical, a, b);
  const inside = (side / a) ** 2 + (vertical / b) ** 2 <= 1;
  const distance = Math.hypot(nearSide - side, nearVertical - vertical);
  return {
    onTarget: inside,
    size: inside ? -distance : distance,
    toEdgeVerticalM: (nearVertical - vertical) * SMALLEST_VERTICAL_M,
    toEdgeArmSideM: (nearSide - side) * SMALLEST_ARM_SIDE_M,
  };
}

/**
 * The nearest point of the axis-aligned ellipse (a, b) about the origin, by bisection on the Lagrange multiplier in the
 * first quadrant (Eberly, "Distance from a point to an ellipse", from memory): safe for points on the axes and at the centre.
 */
export function nearestOnEllipse(x: number, y: number, a: number, b: number): readonly [number, number] {
  if (a < b) {
    const [nearY, nearX] = nearestOnEllipse(y, x, b, a);
    return [nearX, nearY];
  }
  const px = Math.abs(x);
  const py = Math.abs(y);
  // So near the axis the multiplier is lost in rounding; the axis itself has a closed form.
  const [qx, qy] = py > 1e-9 * b ? offAxis(px, py, a, b) : onMajorAxis(px, a, b);
  return [x < 0 ? -qx : qx, y < 0 ? -qy : qy];
}

function onMajorAxis(px: number, a: number, b: number): readonly [number, number] {
  const reach = (a * a - b * b) / a;
  if (px >= reach || a === b) return [a, 0];
  const qx = (a * a * px) / (a * a - b * b);
  return [qx, b * Math.sqrt(Math.max(0, 1 - (qx / a) ** 2))];
}

function offAxis(px: number, py: number, a: number, b: number): readonly [number, number] {
  const excess = (t: number): number => ((a * px) / (t + a * a)) ** 2 + ((b * py) / (t + b * b)) ** 2 - 1;
  let low = -b * b + b * py;
  let high = -b * b + Math.hypot(a * px, b * py);
  for (let round = 0; round < 200 && low < high; round += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  const t = (low + high) / 2;
  return [(a * a * px) / (t + a * a), (b * b * py) / (t + b * b)];
}
