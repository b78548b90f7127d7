import { line as lineOf, scaleLinear, select } from 'd3';
import { describe, layer, type Layer } from './described.ts';
import { stretches, type GapLineOptions, type GapPoint } from './gap-scale.ts';
import { ticksBetween } from './ticks.ts';

/** One of two gap lines that are laid over each other. */
export interface PairedGap {
  /** Stands at the end of the line. */
  readonly letter: string;
  readonly form: 'square' | 'round';
  readonly line: readonly GapPoint[];
  readonly decisionS: number;
  readonly decisionWidths: number;
}

export interface GapPairData {
  readonly gaps: readonly PairedGap[];
  readonly texts: { readonly name: string; readonly description: string; readonly milliseconds: string; readonly afterRelease: string; readonly widths: string; readonly decision: string };
}

/** The picture reaches at least so many ball widths, so that small gaps look small. */
const LEAST_WIDTHS = 4;

/**
 * Draws how far two throws are from their fastball while they fly, over the time from release: the first dashed, the second
 * in one line, a ring on each at its decision point. Ball widths are ruled across.
 */
export function drawGapPair(element: SVGSVGElement, { gaps, texts }: GapPairData, options: GapLineOptions): void {
  const svg = select(element).classed('gap-line gap-pair', true).style('font-size', `${options.textPx}px`);
  describe(svg, options, texts.name, texts.description);
  const scale = pairScale(gaps, options);
  drawRuling(layer(svg, 'ruling'), scale, options, texts);
  drawLines(layer(svg, 'lines'), gaps, scale, options.textPx);
  drawEnds(layer(svg, 'ends'), gaps, scale, options.textPx);
}

interface PairScale {
  readonly x: (timeS: number) => number;
  readonly y: (widths: number) => number;
  readonly endS: number;
  readonly most: number;
}

function pairScale(gaps: readonly PairedGap[], { width, height, textPx }: GapLineOptions): PairScale {
  const known = gaps.flatMap(({ line }) => stretches(line).flat());
  const endS = Math.max(0.1, ...known.map(([timeS]) => timeS));
  const most = Math.max(LEAST_WIDTHS, ...known.map(([, widths]) => widths));
  return {
    endS, most,
    x: scaleLinear([0, endS], [textPx * 1.6, width - textPx * 2]),
    y: scaleLinear([0, most], [height - textPx * 2.8, textPx * 1.9]),
  };
}

function drawRuling(group: Layer, { x, y, endS, most }: PairScale, { width, height, textPx }: GapLineOptions, texts: GapPairData['texts']): void {
  const step = Math.ceil(most / 8);
  const widths = Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => index * step);
  group.selectAll<SVGLineElement, number>('line.rule').data(widths).join('line').attr('class', (value) => (value === 0 ? 'rule axis' : 'rule'))
    .attr('x1', x(0)).attr('x2', width).attr('y1', (value) => y(value)).attr('y2', (value) => y(value));
  group.selectAll<SVGTextElement, number>('text.count').data(widths).join('text').attr('class', 'count tick-text').attr('text-anchor', 'end')
    .attr('x', textPx * 1.1).attr('y', (value) => y(value) + textPx * 0.35).text(String);
  const ticks = ticksBetween(0, endS, x(1) - x(0), textPx * 4.2, { perSi: 1000, unit: texts.milliseconds }).filter(({ si }) => x(si) < width - textPx * 1.75);
  group.selectAll<SVGTextElement, (typeof ticks)[number]>('text.time').data(ticks).join('text').attr('class', 'time tick-text').attr('text-anchor', 'middle')
    .attr('x', ({ si }) => x(si)).attr('y', y(0) + textPx * 1.2).text(({ value }) => `${value} ${texts.milliseconds}`);
  const said = [{ at: 'widths', words: texts.widths, y: textPx * 0.85 }, { at: 'foot', words: `${texts.afterRelease} · ○ ${texts.decision}`, y: height - textPx * 0.3 }];
  group.selectAll<SVGTextElement, (typeof said)[number]>('text.said').data(said).join('text').attr('class', 'said tick-text').attr('x', 0).attr('y', ({ y: at }) => at).text(({ words }) => words);
}

function drawLines(group: Layer, gaps: readonly PairedGap[], { x, y }: PairScale, textPx: number): void {
  const draw = lineOf<GapPoint>().x(([timeS]) => x(timeS)).y(([, widths]) => y(widths));
  const runs = gaps.flatMap(({ line, form }) => stretches(line).map((run) => ({ run, form })));
  group.selectAll<SVGPathElement, (typeof runs)[number]>('path').data(runs).join('path').attr('class', ({ form }) => `paired ${form}`).attr('d', ({ run }) => draw(run));
  group.selectAll<SVGCircleElement, PairedGap>('circle').data(gaps, ({ letter }) => letter).join('circle').attr('class', 'paired-decision')
    .attr('cx', ({ decisionS }) => x(decisionS)).attr('cy', ({ decisionWidths }) => y(decisionWidths)).attr('r', textPx * 0.3);
}

/** The letter at each line's end; where both end together, the lower line's goes below. */
function drawEnds(group: Layer, gaps: readonly PairedGap[], { x, y }: PairScale, textPx: number): void {
  const ends = gaps.flatMap(({ letter, form, line }) => {
    const last = stretches(line).at(-1)?.at(-1);
    return last === undefined ? [] : [{ letter, form, x: x(last[0]) + textPx * 0.95, y: y(last[1]) }];
  }).sort((a, b) => a.y - b.y);
  const apart = ends.map((end, index) => (index === 0 ? end : { ...end, y: Math.max(end.y, ends[0]!.y + textPx * 1.35) }));
  const marks = group.selectAll<SVGGElement, (typeof apart)[number]>('g').data(apart, ({ letter }) => letter).join((enter) => {
    const mark = enter.append('g');
    mark.append('path');
    mark.append('text').attr('text-anchor', 'middle').attr('dy', '0.36em');
    return mark;
  }).attr('class', ({ form }) => `paired-end ${form}`).attr('transform', ({ x: left, y: top }) => `translate(${left},${top})`);
  const r = textPx * 0.62;
  marks.select('path').attr('d', ({ form }) => (form === 'square' ? `M${-r * 0.9},${-r * 0.9}H${r * 0.9}V${r * 0.9}H${-r * 0.9}Z` : `M${-r},0a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`));
  marks.select('text').text(({ letter }) => letter);
}
