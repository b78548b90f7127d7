import { select } from 'd3';
import { describe, layer, type Layer } from './described.ts';
import type { Box, Taken } from './place-label.ts';
import { drawAxes, giveWay } from './plane-axes.ts';
import type { PlaneData, PlaneMark, PlaneSpread } from './plane-data.ts';
import { circle, drawCloud } from './plane-marks.ts';
import { planeScale, reachOf, type PlaneScale, type Separation } from './plane-scale.ts';
import { drawSpread } from './plane-spread.ts';
import { drawZone } from './plane-zone.ts';
import { halfBoxM } from './turned-ellipse.ts';

/** One throw; its trial's letter stands in its mark. */
export interface LetteredMark extends PlaneMark {
  readonly form: 'square' | 'round';
  readonly letter: string;
}

/** Throws of several trials over the same fastball and target. */
export interface LetteredPlaneData {
  readonly plane: Omit<PlaneData, 'marks' | 'miss' | 'spread' | 'reach' | 'unexplained'>;
  readonly marks: readonly LetteredMark[];
  /** Drawn dotted, and drawn in one line. */
  readonly spreads: readonly [PlaneSpread | null, PlaneSpread | null];
}

export interface LetteredPlaneOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

/** Draws all marks alike whatever their age, each with its letter in it, filled on target: what the Wall shows throw by throw, seen as a whole. */
export function drawLetteredPlane(element: SVGSVGElement, { plane, marks, spreads: [spreadA, spreadB] }: LetteredPlaneData, { width, height, textPx }: LetteredPlaneOptions): void {
  const svg = select(element).classed('separation-plane lettered-plane', true).style('font-size', `${textPx}px`);
  describe(svg, { width, height }, plane.texts.name, plane.texts.description);
  const data: PlaneData = { ...plane, marks, miss: null, spread: null, reach: null, unexplained: null };
  const scale = planeScale(reachOf([...marks, ...extremesOf(spreadA), ...extremesOf(spreadB)], plane.zone), width, height, plane.armSideOn === 'right' ? 1 : -1);
  const bounds: Box = { x: 0, y: 0, width, height };
  const [zone, cloud, axes, first, second] = ['zone', 'cloud', 'axes', 'spread-a', 'spread-b'].map((name) => layer(svg, name)) as [Layer, Layer, Layer, Layer, Layer];
  drawCloud(cloud, data, scale);
  const taken: Taken[] = [...drawAxes(axes, data, scale, { width, height, textPx })];
  const radius = textPx * 0.68;
  const covered = drawLettered(layer(svg, 'marks'), marks, scale, radius, bounds);
  taken.push(...covered);
  const zoned = drawZone(zone, data, scale, textPx, bounds, taken);
  taken.push(...zoned);
  const nameA = drawSpread(first, spreadA, scale, textPx, bounds, taken);
  taken.push(...nameA);
  const nameB = drawSpread(second, spreadB, scale, textPx, bounds, taken);
  giveWay(axes, [...nameA, ...nameB, ...covered, ...zoned.slice(0, 1)], zoned.slice(1));
}

/** Marks with a letter in them; one beyond the plane stands at its rim. Gives the boxes that they cover. */
function drawLettered(group: Layer, marks: readonly LetteredMark[], scale: PlaneScale, radius: number, { width, height }: Box): Box[] {
  const within = (value: number, most: number): number => Math.max(radius, Math.min(most - radius, value));
  const placed = marks.map((mark) => ({ ...mark, x: within(scale.x(mark.armSideM), width), y: within(scale.y(mark.verticalM), height) }));
  group.selectAll<SVGGElement, (typeof placed)[number]>('g.lettered').data(placed, ({ place }) => String(place)).join((enter) => {
    const mark = enter.append('g').attr('class', 'lettered');
    mark.append('path');
    mark.append('text').attr('text-anchor', 'middle').attr('dy', '0.36em');
    mark.append('title');
    return mark;
  })
    .attr('transform', ({ x, y }) => `translate(${x},${y})`)
    .attr('data-trial', ({ letter: trial }) => trial)
    .attr('data-on-target', ({ onTarget }) => (onTarget === null ? 'not-judged' : onTarget ? 'yes' : 'no'))
    .classed('inferred', ({ inferred }) => inferred)
    .each(function paint({ form, letter, said, inferred, onTarget }) {
      const [path, text, title] = this.children as unknown as [SVGPathElement, SVGTextElement, SVGTitleElement];
      path.setAttribute('d', (form === 'square' ? square(radius * 0.9) : circle(radius)) + (inferred && onTarget === true ? hatch(radius * 0.9) : ''));
      text.textContent = letter;
      title.textContent = said;
    });
  return placed.map(({ x, y }) => ({ x: x - radius, y: y - radius, width: radius * 2, height: radius * 2 }));
}

/** The corners of the box round an ellipse. */
function extremesOf(spread: PlaneSpread | null): Separation[] {
  if (spread === null) return [];
  const { verticalM, armSideM } = spread;
  const { tallM, wideM } = halfBoxM(spread);
  return [{ verticalM: verticalM - tallM, armSideM: armSideM - wideM }, { verticalM: verticalM + tallM, armSideM: armSideM + wideM }];
}

/** Two short lines across the corners: inferred, and the letter stays readable. */
const hatch = (r: number): string => `M${-r * 0.9},${r * 0.2}L${-r * 0.2},${r * 0.9}M${r * 0.2},${-r * 0.9}L${r * 0.9},${-r * 0.2}`;
const square = (r: number): string => `M${-r},${-r}H${r}V${r}H${-r}Z`;
