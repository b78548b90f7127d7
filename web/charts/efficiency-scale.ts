import { scaleLinear, select } from 'd3';
import { describe, layer, type Layer } from './described.ts';
import { overlap, type Box } from './place-label.ts';

/** The fastball's efficiency, 0–1, on the scale that the families are told by. */
export interface EfficiencyScaleData {
  /** Null where it is not known: the scale is drawn with nothing on it. */
  readonly efficiency: { readonly mean: number; readonly low: number; readonly high: number } | null;
  /** Between these two no family is favoured. */
  readonly marks: readonly [low: number, high: number];
  readonly texts: { readonly name: string; readonly description: string; readonly below: string; readonly between: string; readonly above: string };
}

export interface EfficiencyScaleOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

/** Shown from here on, unless the fastball lies lower. */
const USUAL_LOWEST = 0.6;

interface Named {
  readonly text: string;
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Draws the interval of an efficiency against the two marks, so that one that straddles a mark is seen to. */
export function drawEfficiencyScale(element: SVGSVGElement, data: EfficiencyScaleData, { width, height, textPx }: EfficiencyScaleOptions): void {
  const svg = select(element).classed('efficiency-scale', true).style('font-size', `${textPx}px`);
  describe(svg, { width, height }, data.texts.name, data.texts.description);
  const { efficiency, marks, texts } = data;
  const edge = textPx * 0.5;
  const lowest = efficiency !== null && efficiency.low < USUAL_LOWEST ? Math.floor(efficiency.low * 10) / 10 : USUAL_LOWEST;
  const x = scaleLinear([lowest, 1], [edge, width - edge]);
  const y = height - textPx * 1.75;
  drawGround(layer(svg, 'ground'), x, width, y, marks, textPx);
  drawNames(layer(svg, 'names'), [
    { text: texts.below, x: 0, anchor: 'start' },
    { text: texts.above, x: width, anchor: 'end' },
    { text: texts.between, x: (x(marks[0]) + x(marks[1])) / 2, anchor: 'middle' },
  ], y - textPx * 0.75, textPx);
  const shown = efficiency === null ? [] : [efficiency];
  const known = layer(svg, 'known');
  known.selectAll<SVGLineElement, typeof shown[number]>('line').data(shown).join('line').attr('class', 'interval')
    .attr('x1', ({ low }) => x(low)).attr('x2', ({ high }) => x(high)).attr('y1', y).attr('y2', y);
  known.selectAll<SVGCircleElement, typeof shown[number]>('circle').data(shown).join('circle').attr('class', 'mean')
    .attr('cx', ({ mean }) => x(mean)).attr('cy', y).attr('r', textPx * 0.34);
}

/** The names of the regions, the more telling first: one that would run into another is left out; the description has it. */
function drawNames(layer: Layer, names: readonly Named[], y: number, textPx: number): void {
  const kept: Box[] = [];
  layer.selectAll<SVGTextElement, Named>('text').data(names).join('text').attr('class', 'region-text')
    .attr('x', ({ x }) => x).attr('y', y).attr('text-anchor', ({ anchor }) => anchor).text(({ text }) => text)
    .each(function fit() {
      const { x, y: top, width, height } = this.getBBox();
      const box = { x: x - textPx * 0.3, y: top, width: width + textPx * 0.6, height };
      const clashes = kept.some((other) => overlap(box, other) > 0);
      this.classList.toggle('left-out', clashes);
      if (!clashes) kept.push(box);
    });
}

/** The line, its two marks, and their numbers. */
function drawGround(ground: Layer, x: (share: number) => number, width: number, y: number, marks: readonly [number, number], textPx: number): void {
  const reach = textPx * 0.5;
  ground.selectAll<SVGLineElement, null>('line.axis').data([null]).join('line').attr('class', 'axis')
    .attr('x1', 0).attr('x2', width).attr('y1', y).attr('y2', y);
  ground.selectAll<SVGLineElement, number>('line.mark').data(marks).join('line').attr('class', 'mark')
    .attr('x1', x).attr('x2', x).attr('y1', y - reach).attr('y2', y + reach);
  ground.selectAll<SVGTextElement, number>('text').data(marks).join('text').attr('class', 'mark-text')
    .attr('x', x).attr('y', y + textPx * 1.5).attr('text-anchor', 'middle').text((share) => `${Math.round(share * 100)} %`);
}
