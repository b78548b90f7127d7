import { scaleLinear, select } from 'd3';
import { describe, layer, type Layer, type Svg } from './described.ts';
import { ticksBetween, type Ruling } from './ticks.ts';

/** The difference of two trials with its interval, in any one unit; below zero is less. */
export interface DifferenceData {
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  /** Pulled towards zero. */
  readonly shrunken: number;
  /** Up to this far from zero in either direction nothing matters. */
  readonly smallest: number;
  readonly ruling: Ruling;
  readonly texts: { readonly name: string; readonly description: string; readonly less: string; readonly more: string; readonly small: string };
}

export interface DifferenceOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

type X = (value: number) => number;

/** Draws the interval against zero and against what does not matter: whether it touches either is the verdict. */
export function drawDifference(element: SVGSVGElement, data: DifferenceData, { width, height, textPx }: DifferenceOptions): void {
  const svg = select(element).classed('difference-line', true).style('font-size', `${textPx}px`);
  describe(svg, { width, height }, data.texts.name, data.texts.description);
  const reach = Math.max(Math.abs(data.low), Math.abs(data.high), data.smallest * 1.6) * 1.06;
  const x = scaleLinear([-reach, reach], [0, width]);
  const [top, bottom] = [textPx * 1.7, height - textPx * 1.7];
  drawGround(svg, data, x, { top, bottom, width, textPx });
  const middle = (top + bottom) / 2;
  const known = layer(svg, 'known');
  known.selectAll('line.interval').data([data]).join('line').attr('class', 'interval').attr('x1', ({ low }) => x(low)).attr('x2', ({ high }) => x(high)).attr('y1', middle).attr('y2', middle);
  known.selectAll('line.end').data([data.low, data.high]).join('line').attr('class', 'end').attr('x1', x).attr('x2', x).attr('y1', middle - textPx * 0.5).attr('y2', middle + textPx * 0.5);
  known.selectAll('circle.shrunken').data([data.shrunken]).join('circle').attr('class', 'shrunken').attr('cx', x).attr('cy', middle).attr('r', textPx * 0.4);
  known.selectAll('circle.raw').data([data.difference]).join('circle').attr('class', 'raw').attr('cx', x).attr('cy', middle).attr('r', textPx * 0.4);
}

interface Room {
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
  readonly textPx: number;
}

/** What the interval is read against: zero, the band that does not matter, a ruler, and the names of both ways. */
function drawGround(svg: Svg, { smallest, ruling, texts }: DifferenceData, x: X, { top, bottom, width, textPx }: Room): void {
  const ground = layer(svg, 'ground');
  ground.selectAll('rect.small').data([smallest]).join('rect').attr('class', 'small').attr('x', x(-smallest)).attr('width', x(smallest) - x(-smallest)).attr('y', top).attr('height', bottom - top);
  ground.selectAll('line.base').data([0]).join('line').attr('class', 'base').attr('x1', 0).attr('x2', width).attr('y1', bottom).attr('y2', bottom);
  ground.selectAll('line.zero').data([0]).join('line').attr('class', 'zero').attr('x1', x(0)).attr('x2', x(0)).attr('y1', top - textPx * 0.3).attr('y2', bottom + textPx * 0.3);
  drawRuler(ground, ruling, x, { top, bottom, width, textPx });
  const ends = [{ text: `← ${texts.less}`, at: 0, anchor: 'start' }, { text: `${texts.more} →`, at: width, anchor: 'end' }];
  ground.selectAll<SVGTextElement, (typeof ends)[number]>('text.way').data(ends).join('text').attr('class', 'way')
    .attr('x', ({ at }) => at).attr('y', textPx * 0.95).attr('text-anchor', ({ anchor }) => anchor).text(({ text }) => text);
}

function drawRuler(ground: Layer, ruling: Ruling, x: X, { bottom, width, textPx }: Room): void {
  const pxPerUnit = x(1) - x(0);
  const reach = width / 2 / pxPerUnit;
  const ticks = [{ si: 0, value: 0 }, ...ticksBetween(-reach, reach, pxPerUnit, textPx * 4, ruling)].filter(({ si }) => x(si) > textPx * 1.6 && x(si) < width - textPx * 1.6);
  ground.selectAll('line.tick').data(ticks).join('line').attr('class', 'tick').attr('x1', ({ si }) => x(si)).attr('x2', ({ si }) => x(si)).attr('y1', bottom).attr('y2', bottom + textPx * 0.3);
  ground.selectAll<SVGTextElement, (typeof ticks)[number]>('text.tick-text').data(ticks).join('text').attr('class', 'tick-text')
    .attr('x', ({ si }) => x(si)).attr('y', bottom + textPx * 1.4).attr('text-anchor', 'middle').text(({ value }) => `${value === 0 ? 0 : Math.abs(value)} ${ruling.unit}`);
}
