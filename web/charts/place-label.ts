/** A rectangle by its left, top, width and height, in pixels. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Something that a label should not cover, and how much it minds: 1 unless said. */
export interface Taken extends Box {
  readonly minds?: number;
}

/** What a label belongs to: it stands as near to it as it can. */
export interface Anchor {
  readonly x: number;
  readonly y: number;
}

/** Square pixels covered weigh against pixels of distance. */
const COVERED_WEIGHS = 2;
/** A pixel farther from what the label belongs to, against a square pixel covered twice. */
const FAR_WEIGHS = 8;
/** A later wish costs as much as so many heights of the label. */
const LATER_WISH_WEIGHS = 0.1;

/**
 * The best place for a label of some size: inside the bounds and covering least. The places wished for are tried first, the
 * earlier the better; where all of them cover something, every other place too, in steps of half the label's height, the
 * nearer to its anchor the better.
 */
export function placeLabel(size: { readonly width: number; readonly height: number }, anchor: Anchor, wishes: readonly Anchor[], bounds: Box, taken: readonly Taken[]): Box {
  const { width, height } = size;
  const inside = ({ x, y }: Anchor): Box => ({
    width, height,
    x: Math.max(bounds.x, Math.min(x, bounds.x + bounds.width - width)),
    y: Math.max(bounds.y, Math.min(y, bounds.y + bounds.height - height)),
  });
  let best = inside(wishes[0] ?? anchor);
  let least = Number.POSITIVE_INFINITY;
  const consider = (box: Box, cost: number): void => {
    if (cost >= least) return;
    const whole = cost + COVERED_WEIGHS * coveredArea(box, taken, (least - cost) / COVERED_WEIGHS);
    if (whole < least - 1e-6) [best, least] = [box, whole];
  };
  wishes.forEach((wish, index) => consider(inside(wish), index * height * LATER_WISH_WEIGHS));
  if (coveredArea(best, taken) === 0) return best;
  const step = Math.max(4, height / 2);
  for (let y = bounds.y; y <= bounds.y + bounds.height - height; y += step) {
    for (let x = bounds.x; x <= bounds.x + bounds.width - width; x += step) {
      const cost = height + away(x, y, size, anchor) * FAR_WEIGHS;
      // Most places are too far away to be looked at closer, and a box for each would be a sixth of all that a scrub leaves to be swept up.
      if (cost < least) consider({ x, y, width, height }, cost);
    }
  }
  return best;
}

/**
 * The area of a box that is covered, in square pixels, by how much what it covers minds.
 * @param enough from which on it does not matter how much
 */
export function coveredArea(box: Box, taken: readonly Taken[], enough = Number.POSITIVE_INFINITY): number {
  let sum = 0;
  for (const other of taken) {
    sum += overlap(box, other) * (other.minds ?? 1);
    if (sum >= enough) break;
  }
  return sum;
}

/** Shared area of two boxes, in square pixels. */
export function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

/** From the nearest point of the box. */
function away(x: number, y: number, { width, height }: Pick<Box, 'width' | 'height'>, anchor: Anchor): number {
  const dx = Math.max(x - anchor.x, 0, anchor.x - x - width);
  const dy = Math.max(y - anchor.y, 0, anchor.y - y - height);
  return Math.hypot(dx, dy);
}

/** Small boxes along a line, so that a slanting line takes only the room that it covers. */
export function boxesAlong(x1: number, y1: number, x2: number, y2: number, thick: number): Box[] {
  const count = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / thick));
  return Array.from({ length: count + 1 }, (_, index) => ({
    x: x1 + ((x2 - x1) * index) / count - thick / 2, y: y1 + ((y2 - y1) * index) / count - thick / 2, width: thick, height: thick,
  }));
}
