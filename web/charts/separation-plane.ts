import { select } from 'd3';
import { continues, describe, layer, type Layer, type Svg } from './described.ts';
import type { Box, Taken } from './place-label.ts';
import { drawAxes, giveWay } from './plane-axes.ts';
import { coveredBy, drawCloud, drawMarks } from './plane-marks.ts';
import { drawLetters } from './plane-letters.ts';
import { drawMiss } from './plane-miss.ts';
import type { PlaneData, PlaneOptions } from './plane-data.ts';
import { drawReach, nameReach } from './plane-reach.ts';
import { planeScale, reachOf, type PlaneScale } from './plane-scale.ts';
import { drawSpread } from './plane-spread.ts';
import { drawUnexplained, nameUnexplained } from './plane-unexplained.ts';
import { drawZone } from './plane-zone.ts';
import { drawHandles, handleBoxes } from './zone-handles.ts';

/**
 * Draws how far each throw separates from the athlete's own fastball, which lies at the origin: down is vertical separation
 * gained, sideways arm and glove side as seen from the mound. Drawing again with the same data changes nothing.
 */
export function drawSeparationPlane(element: SVGSVGElement, data: PlaneData, options: PlaneOptions): void {
  const svg = select(element);
  const { width, height, textPx } = options;
  const goesOn = continues(svg, data.generation);
  describe(svg.classed('separation-plane', true), options, data.texts.name, data.texts.description, options.onZone === undefined ? 'img' : 'group');
  svg.style('font-size', `${textPx}px`);
  const scale = planeScale(reachOf([...data.marks, ...(data.unexplained === null ? [] : [data.unexplained.from])], data.zone), width, height, data.armSideOn === 'right' ? 1 : -1);
  drawContents(svg, data, options, scale, goesOn);
  if (options.onZone !== undefined && options.handleTexts !== undefined) {
    drawHandles(layer(svg, 'handles'), data.zone, scale, { onZone: options.onZone, texts: options.handleTexts, radius: gripRadius(textPx) });
  } else {
    svg.select('g.handles').remove();
  }
}

/** Of the grips that move and size the zone. */
function gripRadius(textPx: number): number {
  return Math.max(12, textPx * 0.6);
}

/** From the ground up. Each name then finds its place among what is drawn, the more pressing first. */
function drawContents(svg: Svg, data: PlaneData, options: PlaneOptions, scale: PlaneScale, goesOn: boolean): void {
  const { width, height, textPx } = options;
  const bounds: Box = { x: 0, y: 0, width, height };
  const taken: Taken[] = options.onZone === undefined ? [] : handleBoxes(data.zone, scale, gripRadius(textPx));
  const take = <T extends Taken>(boxes: T[]): T[] => {
    taken.push(...boxes);
    return boxes;
  };
  const [reachable, zone, cloud, axes, spread] = ['reachable', 'zone', 'cloud', 'axes', 'spread'].map((name) => layer(svg, name)) as [Layer, Layer, Layer, Layer, Layer];
  drawReach(reachable, data.reach, scale);
  drawCloud(cloud, data, scale);
  take(drawAxes(axes, data, scale, options));
  const placed = drawMarks(layer(svg, 'marks'), data.marks, scale, options, goesOn);
  const marks = take(coveredBy(placed));
  const arrowLayer = layer(svg, 'unexplained');
  take(drawUnexplained(arrowLayer, data.unexplained, scale, textPx));
  const zoned = take(drawZone(zone, data, scale, textPx, bounds, taken));
  const missed = take(drawMiss(layer(svg, 'miss'), data, scale, options, bounds, taken));
  const arrowName = take(nameUnexplained(arrowLayer, data.unexplained, scale, textPx, bounds, taken));
  const spreadName = take(drawSpread(spread, data.spread, scale, textPx, bounds, taken));
  const reachName = take(nameReach(reachable, data.reach, scale, textPx, bounds, taken));
  giveWay(axes, [...missed.slice(0, 1), ...arrowName, ...spreadName, ...reachName, ...marks, ...zoned.slice(0, 1)], zoned.slice(1));
  drawLetters(layer(svg, 'letters'), placed, taken, options);
}
