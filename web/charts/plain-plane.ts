import { describe, layer, ofGeneration, pictureOf, type Layer, type Svg } from './described.ts';
import type { Box, Taken } from './place-label.ts';
import { drawAxes, giveWay } from './plane-axes.ts';
import { coveredBy, drawCloud, drawMarks } from './plane-marks.ts';
import { drawLetters } from './plane-letters.ts';
import { drawMiss } from './plane-miss.ts';
import type { PlaneData, PlaneOptions, PlaneReach, PlaneUnexplained } from './plane-data.ts';
import { planeScale, reachOf, type PlaneScale, type Reach } from './plane-scale.ts';
import { drawSpread } from './plane-spread.ts';
import { drawZone } from './plane-zone.ts';

/** What some planes show and others never do; a screen that never does need not load it. */
export interface PlaneParts {
  readonly reach: {
    draw(layer: Layer, reach: PlaneReach | null, scale: PlaneScale): void;
    name(layer: Layer, reach: PlaneReach | null, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Box[];
  };
  readonly unexplained: {
    draw(layer: Layer, unexplained: PlaneUnexplained | null, scale: PlaneScale, textPx: number): Taken[];
    name(layer: Layer, unexplained: PlaneUnexplained | null, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Box[];
  };
  readonly handles: {
    draw(svg: Svg, data: PlaneData, scale: PlaneScale, options: PlaneOptions): void;
    boxes(data: PlaneData, scale: PlaneScale, options: PlaneOptions): Taken[];
  };
}

/**
 * Draws how far each throw separates from the athlete's own fastball, which lies at the origin: down is vertical separation
 * gained, sideways arm and glove side as seen from the mound. Drawing again with the same data changes nothing.
 * @param parts null draws fastball, target, throws, miss and spread alone
 */
export function drawPlane(element: SVGSVGElement, data: PlaneData, options: PlaneOptions, parts: PlaneParts | null): void {
  const svg = pictureOf(element, 'separation-plane');
  const { textPx } = options;
  ofGeneration(svg, data.generation);
  describe(svg, options, data.texts.name, data.texts.description, options.onZone === undefined ? 'img' : 'group');
  svg.style('font-size', `${textPx}px`);
  const scale = scaleOf(data, options);
  drawContents(svg, data, options, scale, parts);
  parts?.handles.draw(svg, data, scale, options);
}

/** Asked again for each mark that comes, ahead of everything else. */
const REACH = new WeakMap<PlaneData, Reach>();

/** How far a plane has to reach to hold what lies on it. */
export function planeReach(data: PlaneData): Reach {
  const known = REACH.get(data);
  if (known !== undefined) return known;
  const { marks, zone, unexplained } = data;
  const reach = reachOf(unexplained === null ? marks : [...marks, unexplained.from], zone);
  REACH.set(data, reach);
  return reach;
}

/** How a plane is ruled, by what lies on it and by the room that it has. */
export function scaleOf(data: PlaneData, { width, height }: Pick<PlaneOptions, 'width' | 'height'>): PlaneScale {
  return planeScale(planeReach(data), width, height, data.armSideOn === 'right' ? 1 : -1);
}

/** From the ground up. Each name then finds its place among what is drawn, the more pressing first. */
function drawContents(svg: Svg, data: PlaneData, options: PlaneOptions, scale: PlaneScale, parts: PlaneParts | null): void {
  const { width, height, textPx } = options;
  const bounds: Box = { x: 0, y: 0, width, height };
  const taken: Taken[] = parts?.handles.boxes(data, scale, options) ?? [];
  const take = <T extends Taken>(boxes: T[]): T[] => {
    taken.push(...boxes);
    return boxes;
  };
  const [reachable, zone, cloud, axes, spread] = ['reachable', 'zone', 'cloud', 'axes', 'spread'].map((name) => layer(svg, name)) as [Layer, Layer, Layer, Layer, Layer];
  parts?.reach.draw(reachable, data.reach, scale);
  drawCloud(cloud, data, scale);
  take(drawAxes(axes, data, scale, options));
  const placed = drawMarks(layer(svg, 'marks'), data.marks, scale, options);
  const marks = take(coveredBy(placed));
  const arrowLayer = layer(svg, 'unexplained');
  take(parts?.unexplained.draw(arrowLayer, data.unexplained, scale, textPx) ?? []);
  const zoned = take(drawZone(zone, data, scale, textPx, bounds, taken));
  const missed = take(drawMiss(layer(svg, 'miss'), data, scale, options, bounds, taken));
  const arrowName = take(parts?.unexplained.name(arrowLayer, data.unexplained, scale, textPx, bounds, taken) ?? []);
  const spreadName = take(drawSpread(spread, data.spread, scale, textPx, bounds, taken));
  const reachName = take(parts?.reach.name(reachable, data.reach, scale, textPx, bounds, taken) ?? []);
  giveWay(axes, [...missed.slice(0, 1), ...arrowName, ...spreadName, ...reachName, ...marks, ...zoned.slice(0, 1)], zoned.slice(1));
  drawLetters(layer(svg, 'letters'), placed, taken, options);
}
