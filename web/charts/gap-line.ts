import { line as lineOf } from 'd3';
import { describe, layer, ofGeneration, pictureOf, type Layer } from './described.ts';
import { drawBalls } from './gap-balls.ts';
import { drawGapLabels } from './gap-labels.ts';
import { gapScale, stretches, type GapLineData, type GapLineOptions, type GapPoint, type GapScale } from './gap-scale.ts';
import { ticksBetween } from './ticks.ts';
import { lettersIn, linesOf, writeLines } from './lines.ts';

/**
 * Draws how far this throw's path is from the fastball's while both fly: time after release to the right, ball widths up,
 * counted in balls that stand on each other at the decision point and at the plate. Drawing again changes nothing.
 */
export function drawGapLine(element: SVGSVGElement, data: GapLineData, options: GapLineOptions): void {
  const svg = pictureOf(element, 'gap-line');
  const { width, textPx } = options;
  ofGeneration(svg, data.generation);
  describe(svg, options, data.texts.name, data.texts.description);
  svg.style('font-size', `${textPx}px`);
  const foot = footLines(data.texts, lettersIn(width, textPx));
  const scale = gapScale(data, options, foot.length);
  drawTimes(layer(svg, 'times'), scale, data.texts.milliseconds, foot, options);
  drawBalls(layer(svg, 'balls'), [{ timeS: data.decisionS, widths: data.decisionWidths }, { timeS: scale.endS, widths: data.plateWidths }], scale);
  drawLine(layer(svg, 'line'), data, scale, textPx);
  drawGapLabels(layer(svg, 'labels'), data, scale, options);
}

function footLines({ afterRelease, decided: { at, brief, basis } }: GapLineData['texts'], mostLetters: number): string[] {
  const whole = [afterRelease, at, basis].join(', ');
  const parts = [afterRelease, at.length < mostLetters ? at : brief, basis];
  return whole.length <= mostLetters ? [whole] : parts.flatMap((part, index) => linesOf(index < parts.length - 1 ? `${part},` : part, mostLetters));
}

function drawTimes(group: Layer, { x, y, endS }: GapScale, unit: string, foot: readonly string[], { width, height, textPx }: GapLineOptions): void {
  const floor = y(0);
  group.selectAll<SVGLineElement, number>('line.axis').data([floor]).join('line').attr('class', 'axis').attr('x1', 0).attr('x2', width).attr('y1', floor).attr('y2', floor);
  const ticks = ticksBetween(0, endS, x(1) - x(0), textPx * 3.9, { perSi: 1000, unit }).filter(({ si }) => x(si) < width - textPx * 1.75);
  group.selectAll<SVGLineElement, (typeof ticks)[number]>('line.tick').data(ticks, ({ value }) => value).join('line').attr('class', 'tick')
    .attr('x1', ({ si }) => x(si)).attr('x2', ({ si }) => x(si)).attr('y1', floor).attr('y2', floor + textPx * 0.24);
  group.selectAll<SVGTextElement, (typeof ticks)[number]>('text.tick-text').data(ticks, ({ value }) => value).join('text').attr('class', 'tick-text')
    .attr('x', ({ si }) => x(si)).attr('y', floor + textPx * 1.18).attr('text-anchor', 'middle').text(({ value }) => `${value} ${unit}`);
  group.selectAll<SVGTextElement, number>('text.foot-text').data([0]).join('text').attr('class', 'foot-text').attr('y', height - (foot.length - 1) * textPx * 1.16 - textPx * 0.28)
    .each(function write() { writeLines(this, foot, 0, textPx * 1.16, 'down'); });
}

function drawLine(group: Layer, { line, decisionS, decisionWidths, plateWidths }: GapLineData, { x, y, endS }: GapScale, textPx: number): void {
  const draw = lineOf<GapPoint>().x(([timeS]) => x(timeS)).y(([, widths]) => y(widths));
  const runs = stretches(line);
  group.selectAll<SVGPathElement, GapPoint[]>('path').data(runs).join('path').attr('class', 'gap').attr('d', (run) => draw(run));
  const points = [{ kind: 'decision', timeS: decisionS, widths: decisionWidths }, { kind: 'plate', timeS: endS, widths: plateWidths }];
  group.selectAll<SVGCircleElement, (typeof points)[number]>('circle').data(points, ({ kind }) => kind).join('circle')
    .attr('class', ({ kind }) => `gap-point ${kind}`).attr('cx', ({ timeS }) => x(timeS)).attr('cy', ({ widths }) => y(widths)).attr('r', textPx * 0.2);
}
