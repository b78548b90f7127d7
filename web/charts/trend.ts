import { scaleLinear } from 'd3';
import { opacityOfAge } from './age.ts';
import { describe, layer, ofGeneration, pictureOf } from './described.ts';

/** The mean of the last throws and how surely it is known. */
export interface TrendWindow {
  readonly size: number;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** One measure over the last throws of a trial; any one unit. */
export interface TrendData {
  readonly generation: string;
  /** Oldest first; null where it is not known: nothing is drawn across it. */
  readonly values: readonly { readonly place: number; readonly value: number | null; readonly onTarget: boolean | null }[];
  readonly windows: readonly TrendWindow[];
  /** Size of the window whose interval is drawn. */
  readonly spoken: number;
  readonly target: { readonly low: number; readonly high: number } | null;
  readonly texts: { readonly name: string; readonly description: string };
}

export interface TrendOptions {
  readonly width: number;
  readonly height: number;
  /** How many throws the width has room for. */
  readonly throws: number;
  readonly markPx: number;
}

/** Draws a small trend: throws as marks from old to new, each window's mean as a bar over the throws that it averages, behind one of them its 95 % interval. */
export function drawTrend(element: SVGSVGElement, data: TrendData, options: TrendOptions): void {
  const svg = pictureOf(element, 'trend');
  const { width, height, throws, markPx } = options;
  ofGeneration(svg, data.generation);
  describe(svg, options, data.texts.name, data.texts.description);
  const values = data.values.slice(-throws);
  const y = scaleLinear(reach(data, values), [height - markPx * 1.3, markPx * 1.3]);
  const slot = width / throws;
  const x = (index: number): number => width - (values.length - index - 0.5) * slot;

  layer(svg, 'target').selectAll('rect').data(data.target === null ? [] : [data.target]).join('rect').attr('class', 'target-range')
    .attr('x', 0).attr('width', width).attr('y', ({ high }) => y(high)).attr('height', ({ low, high }) => y(low) - y(high));
  const windows = data.windows.filter(({ size }) => size <= throws);
  const left = ({ size }: TrendWindow): number => width - size * slot;
  layer(svg, 'intervals').selectAll('rect').data(windows.filter(({ size }) => size === data.spoken)).join('rect').attr('class', 'interval')
    .attr('x', left).attr('width', ({ size }) => size * slot).attr('y', ({ high }) => y(high)).attr('height', ({ low, high }) => Math.max(1, y(low) - y(high)));
  layer(svg, 'means').selectAll('line').data(windows).join('line').attr('class', 'mean').classed('spoken', ({ size }) => size === data.spoken)
    .attr('x1', left).attr('x2', width).attr('y1', ({ mean }) => y(mean)).attr('y2', ({ mean }) => y(mean));
  const known = values.flatMap(({ place, value, onTarget }, index) => (value === null ? [] : [{ place, value, onTarget, index }]));
  layer(svg, 'throws').selectAll<SVGCircleElement, (typeof known)[number]>('circle').data(known, ({ place }) => String(place)).join('circle')
    .attr('class', 'throw').attr('data-place', ({ place }) => place)
    .attr('data-on-target', ({ onTarget }) => (onTarget === null ? 'not-judged' : onTarget ? 'yes' : 'no'))
    .attr('cx', ({ index }) => x(index)).attr('cy', ({ value }) => y(value)).attr('r', markPx)
    .attr('opacity', ({ index }) => opacityOfAge((values.length - 1 - index) * 0.6));
}

function reach({ windows, spoken, target }: TrendData, values: TrendData['values']): [number, number] {
  const all = [
    ...values.flatMap(({ value }) => (value === null ? [] : [value])),
    ...windows.flatMap(({ size, mean, low, high }) => (size === spoken ? [low, high] : [mean])),
    ...(target === null ? [] : [target.low, target.high]),
  ];
  if (all.length === 0) return [-1, 1];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return low === high ? [low - 1, high + 1] : [low, high];
}
