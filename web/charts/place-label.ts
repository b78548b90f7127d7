/** A rectangle by its left, top, width and height, in pixels. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Which of the boxes wished for is the best place for a label: the one that covers least of what is already there. Each is
 * first pushed inside the bounds; among equals the earlier wish wins, so a label keeps its place while it can.
 * @param wishes never empty
 */
export function placeLabel(wishes: readonly Box[], bounds: Box, taken: readonly Box[]): Box {
  const inside = wishes.map((wish) => pushInside(wish, bounds));
  const cost = (box: Box, index: number): number =>
    taken.reduce((sum, other) => sum + overlap(box, other), 0) + distance(box, wishes[index]!) * 4;
  const costs = inside.map(cost);
  return inside[costs.indexOf(Math.min(...costs))]!;
}

/** Shared area of two boxes, in square pixels. */
export function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

function pushInside(box: Box, bounds: Box): Box {
  return {
    ...box,
    x: Math.max(bounds.x, Math.min(box.x, bounds.x + bounds.width - box.width)),
    y: Math.max(bounds.y, Math.min(box.y, bounds.y + bounds.height - box.height)),
  };
}

function distance(a: Box, b: Box): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
