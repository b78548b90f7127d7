import { curveCatmullRomClosed, line, polygonContains } from 'd3';
import type { Layer } from './described.ts';
import { linesOf, writeLines } from './lines.ts';
import { textBox } from './measured-text.ts';
import { coveredArea, type Box, type Taken } from './place-label.ts';
import type { PlaneReach } from './plane-data.ts';
import type { PlaneScale, Separation } from './plane-scale.ts';

type Corner = [x: number, y: number];

/** The name of the region is broken into lines of at most so many letters. */
const MOST_LETTERS = 12;
const LINE = 1.05;

/** The region that spin alone can reach, as quiet ground behind everything; a hole in it stays open. None leaves none. */
export function drawReach(layer: Layer, reach: PlaneReach | null, scale: PlaneScale): void {
  layer.selectAll<SVGPathElement, PlaneReach>('path').data(reach === null ? [] : [reach]).join('path').attr('class', 'reach-region')
    .attr('fill-rule', 'evenodd').attr('d', ({ outline, hole }) => pathOf(cornersOf(outline, scale)) + (hole === null ? '' : pathOf(cornersOf(hole, scale))));
}

/**
 * Names the region inside it, on the free place that is nearest to its edge; where there is none the region goes without its
 * name, which the description still has. Gives the box of the name.
 */
export function nameReach(layer: Layer, reach: PlaneReach | null, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Box[] {
  const name = layer.selectAll<SVGTextElement, PlaneReach>('text').data(reach === null ? [] : [reach]).join('text').attr('class', 'reach-text');
  if (reach === null) return [];
  writeLines(name.node()!, linesOf(reach.named, MOST_LETTERS), 0, textPx * LINE, 'down');
  const { width, height, y } = textBox(name.node()!, textPx);
  const box = freePlaceIn(reach, { width, height }, scale, bounds, taken, textPx);
  name.classed('left-out', box === null);
  if (box === null) return [];
  name.attr('transform', `translate(${box.x},${box.y - y})`);
  return [box];
}

/** The place for a name of some size wholly inside the region, off everything taken, nearest to the edge of the region. */
export function freePlaceIn({ outline, hole }: PlaneReach, { width, height }: { readonly width: number; readonly height: number }, scale: PlaneScale, bounds: Box, taken: readonly Taken[], textPx: number): Box | null {
  const edge = cornersOf(outline, scale);
  const gap = hole === null ? null : cornersOf(hole, scale);
  const step = textPx / 2;
  const margin = textPx * 0.25;
  let best: Box | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (let y = bounds.y; y <= bounds.y + bounds.height - height; y += step) {
    for (let x = bounds.x; x <= bounds.x + bounds.width - width; x += step) {
      const box: Box = { x, y, width, height };
      if (!isWithin(box, margin, edge, gap) || coveredArea(box, taken) > 0) continue;
      const far = fromEdge(box, edge);
      if (far < nearest) [nearest, best] = [far, box];
    }
  }
  return best;
}

function isWithin({ x, y, width, height }: Box, margin: number, edge: Corner[], hole: Corner[] | null): boolean {
  const xs = [x - margin, x + width / 2, x + width + margin];
  const ys = [y - margin, y + height / 2, y + height + margin];
  return xs.every((px) => ys.every((py) => polygonContains(edge, [px, py]) && (hole === null || !polygonContains(hole, [px, py]))));
}

/** From the middle of a box to the nearest corner of the region. */
function fromEdge({ x, y, width, height }: Box, edge: readonly Corner[]): number {
  return Math.min(...edge.map(([cornerX, cornerY]) => Math.hypot(cornerX - x - width / 2, cornerY - y - height / 2)));
}

function cornersOf(places: readonly Separation[], scale: PlaneScale): Corner[] {
  return places.map(({ verticalM, armSideM }) => [scale.x(armSideM), scale.y(verticalM)]);
}

/** Smooth, because the corners are samples of a smooth edge. */
function pathOf(corners: Corner[]): string {
  return line().curve(curveCatmullRomClosed)(corners) ?? '';
}
