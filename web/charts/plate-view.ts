import { plate } from '../../core/flight/ball.ts';
import { describe, layer, ofGeneration, pictureOf, type Layer } from './described.ts';
import { lettersIn, linesOf, writeLines } from './lines.ts';
import { textBox } from './measured-text.ts';
import { placeLabel, type Anchor, type Box, type Taken } from './place-label.ts';
import type { PlaneMark } from './plane-data.ts';
import { giveWay } from './plane-axes.ts';
import { drawLetters } from './plane-letters.ts';
import { coveredBy, drawMarks, markRadius, type PlacedMark } from './plane-marks.ts';
import { plateOutline, plateScale, type PlateScale } from './plate-scale.ts';
import { ticksBetween, type Ruling } from './ticks.ts';

/** Where throws crossed the front of the plate, as the catcher sees it. */
export interface PlateData {
  /** Another value starts the picture anew. */
  readonly generation: string;
  /** On the catcher's side: a right-hander's arm side is on the left. */
  readonly armSideOn: 'left' | 'right';
  /** Oldest first, each by its height over the ground and its distance from the middle towards the arm side. */
  readonly marks: readonly PlaneMark[];
  /** The region that is aimed at; null where none is asked for. It is no batter's zone. */
  readonly aim: PlateAim | null;
  /** The last throw's place in words; or, where it is not drawn, why. */
  readonly last: { readonly drawn: boolean; readonly words: readonly string[] };
  readonly ruling: Ruling;
  readonly texts: { readonly name: string; readonly description: string; readonly armSide: string; readonly gloveSide: string };
}

/** In metres over the ground and from the middle, arm side positive. */
interface PlateAim {
  readonly lowM: number;
  readonly highM: number;
  readonly gloveSideM: number;
  readonly armSideM: number;
}

export interface PlateOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

const LINE = 1.06;
/** The words of a height give way to a label. */
const HEIGHTS_MIND = 0.1;

/**
 * Draws the plate on the ground and the throws over it, heights ruled from the ground. No zone: a batter's is not measured, and
 * what the picture does not know it does not draw. Drawing again with the same data changes nothing.
 */
export function drawPlateView(element: SVGSVGElement, data: PlateData, options: PlateOptions): void {
  const svg = pictureOf(element, 'plate-view');
  const { width, height, textPx } = options;
  ofGeneration(svg, data.generation);
  describe(svg, options, data.texts.name, data.texts.description);
  svg.style('font-size', `${textPx}px`);
  const sides = sidesOf(data, lettersIn(width / 2, textPx));
  const footPx = (Math.max(...sides.map(({ lines }) => lines.length)) * LINE + 0.3) * textPx;
  const scale = plateScale(data.marks, options, footPx, data.armSideOn === 'right' ? 1 : -1);
  drawGround(layer(svg, 'ground'), scale, options);
  drawAim(layer(svg, 'aimed'), data.aim, scale);
  const heights = layer(svg, 'heights');
  const ruled = drawHeights(heights, scale, data.ruling, textPx);
  drawSides(layer(svg, 'sides'), sides, height - footPx, options);
  const placed = drawMarks(layer(svg, 'marks'), data.marks, scale, { ...options, height: scale.y(0), letters: 'newest' });
  const bounds: Box = { x: 0, y: 0, width, height: scale.y(0) };
  const covered = coveredBy(placed);
  const said = drawLast(layer(svg, 'last'), { ...data.last, words: data.last.words.flatMap((words) => linesOf(words, lettersIn(width, textPx))) }, placed.at(-1) ?? null, textPx, bounds, [...ruled, ...covered]);
  giveWay(heights, [...said, ...covered], []);
  const taken = [...ruled, ...covered, ...said];
  drawLetters(layer(svg, 'letters'), placed, taken, { ...options, height: scale.y(0), letters: 'newest' });
}

/** The plate, the ground it lies on, and its two edges upwards. */
function drawGround(group: Layer, scale: PlateScale, { width }: PlateOptions): void {
  const edges = [-plate.widthM / 2, plate.widthM / 2].map((sideM) => ({ kind: 'edge', x1: scale.x(sideM), x2: scale.x(sideM), y1: 0, y2: scale.y(0) }));
  const lines = [{ kind: 'axis', x1: 0, x2: width, y1: scale.y(0), y2: scale.y(0) }, ...edges];
  group.selectAll<SVGLineElement, (typeof lines)[number]>('line').data(lines).join('line').attr('class', ({ kind }) => kind)
    .attr('x1', ({ x1 }) => x1).attr('x2', ({ x2 }) => x2).attr('y1', ({ y1 }) => y1).attr('y2', ({ y2 }) => y2);
  const outline = `M${plateOutline(scale).map((point) => point.join(',')).join('L')}Z`;
  group.selectAll<SVGPathElement, string>('path').data([outline]).join('path').attr('class', 'plate').attr('d', (path) => path);
}

function drawAim(group: Layer, aim: PlateAim | null, { x, y }: PlateScale): void {
  group.selectAll<SVGRectElement, PlateAim>('rect').data(aim === null ? [] : [aim]).join('rect').attr('class', 'plate-aim')
    .attr('x', ({ gloveSideM, armSideM }) => Math.min(x(gloveSideM), x(armSideM))).attr('width', ({ gloveSideM, armSideM }) => Math.abs(x(armSideM) - x(gloveSideM)))
    .attr('y', ({ highM }) => y(highM)).attr('height', ({ lowM, highM }) => y(lowM) - y(highM));
}

/** Heights over the ground at the left edge. Gives the boxes of their words. */
function drawHeights(group: Layer, { y, pxPerM, topM }: PlateScale, ruling: Ruling, textPx: number): Taken[] {
  const ticks = ticksBetween(0, topM, pxPerM, textPx * 2.2, ruling).filter(({ si }) => y(si) > textPx * 0.5);
  group.selectAll<SVGLineElement, (typeof ticks)[number]>('line').data(ticks, ({ value }) => value).join('line').attr('class', 'tick')
    .attr('x1', 0).attr('x2', textPx * 0.24).attr('y1', ({ si }) => y(si)).attr('y2', ({ si }) => y(si));
  const texts = group.selectAll<SVGTextElement, (typeof ticks)[number]>('text').data(ticks, ({ value }) => value).join('text').attr('class', 'tick-text')
    .attr('x', textPx * 0.42).attr('y', ({ si }) => y(si) + textPx * 0.35).text(({ value }) => `${value} ${ruling.unit}`);
  return texts.nodes().map((text) => ({ ...boxOf(text.getBBox()), minds: HEIGHTS_MIND }));
}

interface Side {
  readonly side: 'left' | 'right';
  readonly lines: readonly string[];
}

function sidesOf({ armSideOn, texts }: PlateData, mostLetters: number): Side[] {
  return (['left', 'right'] as const).map((side) => ({ side, lines: linesOf(side === armSideOn ? texts.armSide : texts.gloveSide, mostLetters) }));
}

function drawSides(group: Layer, sides: readonly Side[], top: number, { width, textPx }: PlateOptions): void {
  group.selectAll<SVGTextElement, Side>('text').data(sides, ({ side }) => side).join('text').attr('class', 'end-text')
    .attr('text-anchor', ({ side }) => (side === 'left' ? 'start' : 'end')).attr('y', top + textPx)
    .each(function write({ side, lines }) { writeLines(this, lines, side === 'left' ? 0 : width, textPx * LINE, 'down'); });
}

/** The last throw's words beside its mark; without a mark, in the middle at the top. Gives their box. */
function drawLast(group: Layer, last: PlateData['last'], newest: PlacedMark | null, textPx: number, bounds: Box, taken: readonly Taken[]): Box[] {
  const text = group.selectAll<SVGTextElement, number>('text').data([0]).join('text').attr('class', 'last-place');
  text.selectAll<SVGTSpanElement, string>('tspan').data(last.words).join('tspan').attr('x', 0).attr('dy', (_, index) => (index === 0 ? '0' : `${LINE}em`)).text((words) => words);
  const { width, height, y } = textBox(text.node()!, textPx);
  const mark = last.drawn ? newest : null;
  const anchor: Anchor = mark ?? { x: bounds.width / 2, y: 0 };
  const wishes = mark === null ? [{ x: bounds.width / 2 - width / 2, y: 0 }] : wishesBeside(mark, width, height, textPx);
  const box = placeLabel({ width, height }, anchor, wishes, bounds, taken);
  text.attr('transform', `translate(${box.x},${box.y - y})`);
  drawLead(group, mark, box, textPx);
  return [box];
}

/** A thin line from the mark to words that found no room beside it. */
function drawLead(group: Layer, mark: PlacedMark | null, box: Box, textPx: number): void {
  const end = mark === null ? null : { x: Math.max(box.x, Math.min(mark.x, box.x + box.width)), y: Math.max(box.y, Math.min(mark.y, box.y + box.height)) };
  const far = mark === null || end === null ? 0 : Math.hypot(end.x - mark.x, end.y - mark.y);
  const share = mark === null ? 0 : (mark.radius + textPx * 0.08) / far;
  const leads = mark !== null && end !== null && far > mark.radius + textPx ? [{ x1: mark.x + (end.x - mark.x) * share, y1: mark.y + (end.y - mark.y) * share, x2: end.x, y2: end.y }] : [];
  group.selectAll<SVGLineElement, (typeof leads)[number]>('line').data(leads).join((enter) => enter.insert('line', 'text')).attr('class', 'lead')
    .attr('x1', ({ x1 }) => x1).attr('y1', ({ y1 }) => y1).attr('x2', ({ x2 }) => x2).attr('y2', ({ y2 }) => y2);
}

function wishesBeside({ x, y }: Anchor, width: number, height: number, textPx: number): Anchor[] {
  const away = markRadius(textPx, true) + textPx * 0.25;
  return [
    { x: x + away, y: y - height / 2 }, { x: x - away - width, y: y - height / 2 },
    { x: x - width / 2, y: y - away - height }, { x: x - width / 2, y: y + away },
  ];
}

function boxOf({ x, y, width, height }: Box): Box {
  return { x, y, width, height };
}
