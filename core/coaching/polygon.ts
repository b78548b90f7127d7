import type { Separation } from '../flight/arm.ts';

/** Whether a point lies within a polygon, by crossings; the last corner joins the first. */
export function within(point: Separation, polygon: readonly Separation[]): boolean {
  return polygon.filter((corner, index) => {
    const next = polygon[(index + 1) % polygon.length]!;
    if (corner.verticalM > point.verticalM === next.verticalM > point.verticalM) return false;
    const along = (point.verticalM - corner.verticalM) / (next.verticalM - corner.verticalM);
    return point.armSideM < corner.armSideM + along * (next.armSideM - corner.armSideM);
  }).length % 2 === 1;
}

/** The point of a polygon's edge nearest to a place, and how far it is. A polygon has at least one corner. */
export function nearestOnEdge(point: Separation, polygon: readonly Separation[]): { readonly point: Separation; readonly distanceM: number } {
  const candidates = polygon.map((corner, index) => nearestOnSide(point, corner, polygon[(index + 1) % polygon.length]!));
  return candidates.reduce((best, next) => (next.distanceM < best.distanceM ? next : best));
}

function nearestOnSide(point: Separation, from: Separation, to: Separation): { readonly point: Separation; readonly distanceM: number } {
  const up = to.verticalM - from.verticalM;
  const side = to.armSideM - from.armSideM;
  const length2 = up * up + side * side;
  const along = length2 === 0 ? 0 : ((point.verticalM - from.verticalM) * up + (point.armSideM - from.armSideM) * side) / length2;
  const share = Math.min(1, Math.max(0, along));
  const near = { verticalM: from.verticalM + share * up, armSideM: from.armSideM + share * side };
  return { point: near, distanceM: Math.hypot(near.verticalM - point.verticalM, near.armSideM - point.armSideM) };
}
