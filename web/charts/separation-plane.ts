import { select } from 'd3';
import { continues, describe, layer } from './described.ts';
import type { Box, Taken } from './place-label.ts';
import { drawAxes, giveWay } from './plane-axes.ts';
import { coveredBy, drawCloud, drawMarks } from './plane-marks.ts';
import { drawLetters } from './plane-letters.ts';
import { drawMiss } from './plane-miss.ts';
import type { PlaneData, PlaneOptions } from './plane-data.ts';
import { planeScale, reachOf } from './plane-scale.ts';
import { drawSpread } from './plane-spread.ts';
import { drawZone } from './plane-zone.ts';
import { drawHandles } from './zone-handles.ts';

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
  const scale = planeScale(reachOf(data.marks, data.zone), width, height, data.armSideOn === 'right' ? 1 : -1);
  const bounds: Box = { x: 0, y: 0, width, height };
  const taken: Taken[] = [];
  const zoneLayer = layer(svg, 'zone');
  drawCloud(layer(svg, 'cloud'), data, scale);
  const axes = layer(svg, 'axes');
  taken.push(...drawAxes(axes, data, scale, options));
  const spreadLayer = layer(svg, 'spread');
  const placed = drawMarks(layer(svg, 'marks'), data.marks, scale, options, goesOn);
  taken.push(...coveredBy(placed));
  const zoned = drawZone(zoneLayer, data, scale, textPx, bounds, taken);
  taken.push(...zoned);
  const missed = drawMiss(layer(svg, 'miss'), data, scale, options, bounds, taken);
  taken.push(...missed);
  const named = drawSpread(spreadLayer, data.spread, scale, textPx, bounds, taken);
  taken.push(...named);
  giveWay(axes, [...missed.slice(0, 1), ...named, ...coveredBy(placed), ...zoned.slice(0, 1)], zoned.slice(1));
  drawLetters(layer(svg, 'letters'), placed, taken, options);
  if (options.onZone !== undefined && options.handleTexts !== undefined) {
    drawHandles(layer(svg, 'handles'), data.zone, scale, { onZone: options.onZone, texts: options.handleTexts, radius: Math.max(12, textPx * 0.6) });
  }
}
