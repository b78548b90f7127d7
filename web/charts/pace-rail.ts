import { scaleLinear } from 'd3';
import { putAge } from './age.ts';
import { describe, drawnFrom, layer, ofGeneration, pictureOf, write, type Layer } from './described.ts';
import { dodge } from './dodge.ts';
import { linesOf, writeLines } from './lines.ts';
import { ticksBetween, type Ruling } from './ticks.ts';

/** One throw on the rail. */
export interface RailThrow {
  readonly place: number;
  readonly speedMps: number;
  readonly fastball: boolean;
  /** Null where there is no band to judge it by. */
  readonly onPace: boolean | null;
}

/** What the pace rail shows, in metres a second. */
export interface RailData {
  readonly generation: string;
  readonly fastball: { readonly speedMps: number; readonly spreadMps: number; readonly words: readonly string[] } | null;
  readonly target: { readonly lowMps: number; readonly highMps: number; readonly words: readonly string[] } | null;
  /** Oldest first. */
  readonly throws: readonly RailThrow[];
  /** The newest throw of known speed, in words: its speed, its arrival gap. */
  readonly last: { readonly speedMps: number; readonly words: readonly string[] } | null;
  readonly ruling: Ruling;
  readonly texts: { readonly name: string; readonly description: string };
}

export interface RailOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

/** Words longer than this go on to another line. */
const MOST_LETTERS = 12;

interface Label {
  readonly key: string;
  readonly at: number;
  readonly words: readonly string[];
}

/** Draws one vertical scale of speed: the fastball's band at the top, the target band below, the last throws as ticks. */
export function drawPaceRail(element: SVGSVGElement, data: RailData, options: RailOptions): void {
  const svg = pictureOf(element, 'pace-rail');
  const { height, textPx } = options;
  ofGeneration(svg, data.generation);
  describe(svg, options, data.texts.name, data.texts.description);
  svg.style('font-size', `${textPx}px`);
  const [slow, fast] = reachOfSpeeds(data);
  const y = scaleLinear([fast, slow], [textPx * 0.7, height - textPx * 0.7]);
  const rail = { x: textPx * 0.75, y, half: textPx * 0.42 };
  const { ruling, fastball, target } = data;
  const [ruled, bands] = [layer(svg, 'rail'), layer(svg, 'bands')];
  drawnFrom(ruled, [slow, fast, height, textPx, ruling, isKnown(data)], () => drawRail(ruled, data, rail, height));
  drawnFrom(bands, [slow, fast, height, textPx, fastball, target], () => drawBands(bands, data, rail));
  drawThrows(layer(svg, 'throws'), data.throws, rail);
  drawLabels(layer(svg, 'labels'), labelsOf(data, y), rail.x + rail.half + textPx * 0.55, height, textPx);
}

interface Rail {
  readonly x: number;
  readonly y: (speedMps: number) => number;
  readonly half: number;
}

/** From a little below the slowest to a little above the fastest of all that is drawn. */
function reachOfSpeeds({ fastball, target, throws }: RailData): readonly [number, number] {
  const speeds = [
    ...throws.map(({ speedMps }) => speedMps),
    ...(fastball === null ? [] : [fastball.speedMps + fastball.spreadMps, fastball.speedMps - fastball.spreadMps]),
    ...(target === null ? [] : [target.lowMps, target.highMps]),
  ];
  const [low, high] = speeds.length === 0 ? [33, 41] : [Math.min(...speeds), Math.max(...speeds)];
  return [Math.min(low - 1, high - 5.5), high + 0.6];
}

/** Without any speed there is nothing to rule. */
function isKnown({ throws, fastball, target }: RailData): boolean {
  return throws.length > 0 || fastball !== null || target !== null;
}

function drawRail(rail: Layer, data: RailData, { x, y, half }: Rail, height: number): void {
  write(rail.selectAll<SVGLineElement, number>('line.axis').data([0]).join('line'), { class: () => 'axis', x1: () => x, x2: () => x, y1: () => 0, y2: () => height });
  const pxPerMps = Math.abs(y(1) - y(0));
  const marks = isKnown(data) ? ticksBetween(0, 70, pxPerMps, 8, data.ruling).filter(({ si }) => y(si) > 0 && y(si) < height) : [];
  write(rail.selectAll<SVGLineElement, (typeof marks)[number]>('line.tick').data(marks, ({ value }) => value).join('line'), {
    class: () => 'tick',
    x1: () => x, x2: ({ value }) => x - half * (value % 5 === 0 ? 0.8 : 0.4), y1: ({ si }) => y(si), y2: ({ si }) => y(si),
  });
}

function drawBands(bands: Layer, { fastball, target }: RailData, { x, y, half }: Rail): void {
  const drawn = [
    ...(fastball === null ? [] : [{ kind: 'fastball-band', high: fastball.speedMps + fastball.spreadMps, low: fastball.speedMps - fastball.spreadMps }]),
    ...(target === null ? [] : [{ kind: 'target-band', high: target.highMps, low: target.lowMps }]),
  ];
  write(bands.selectAll<SVGRectElement, (typeof drawn)[number]>('rect').data(drawn, ({ kind }) => kind).join('rect'), {
    class: ({ kind }) => kind,
    x: () => x - half, width: () => half * 2, rx: () => half * 0.3,
    y: ({ high }) => y(high), height: ({ high, low }) => Math.max(4, y(low) - y(high)),
  });
}

function drawThrows(group: Layer, throws: readonly RailThrow[], { x, y, half }: Rail): void {
  const newest = throws.at(-1)?.place;
  const age = new Map([...throws].reverse().map(({ place }, index) => [place, index]));
  const reach = ({ place }: RailThrow): number => half * (place === newest ? 1.35 : 0.8);
  const lines = group.selectAll<SVGLineElement, RailThrow>('line').data(throws, ({ place }) => String(place)).join('line');
  write(lines, {
    'data-place': ({ place }) => place,
    'data-on-pace': ({ onPace }) => (onPace === null ? 'not-judged' : onPace ? 'yes' : 'no'),
    'class': ({ fastball, place }) => `throw${fastball ? ' fastball' : ''}${place === newest ? ' newest' : ''}`,
    'x1': (thrown) => x - reach(thrown), 'x2': (thrown) => x + reach(thrown), 'y1': ({ speedMps }) => y(speedMps), 'y2': ({ speedMps }) => y(speedMps),
  }).each(function aged({ place }) {
    putAge(this, age.get(place)!);
  }).order();
}

/** The newest throw has the right of way, then the fastball, then the target. */
function labelsOf({ last, fastball, target }: RailData, y: (speedMps: number) => number): Label[] {
  return [
    ...(last === null ? [] : [{ key: 'last', at: y(last.speedMps), words: last.words }]),
    ...(fastball === null ? [] : [{ key: 'fastball', at: y(fastball.speedMps), words: fastball.words }]),
    ...(target === null ? [] : [{ key: 'target', at: y((target.lowMps + target.highMps) / 2), words: target.words }]),
  ];
}

function drawLabels(group: Layer, labels: readonly Label[], x: number, height: number, textPx: number): void {
  const line = textPx * 1.12;
  const middles = dodge(labels.map(({ at, words }) => ({ at, size: linesIn(words).length * line + textPx * 0.25 })), 0, height);
  write(group.selectAll<SVGTextElement, Label>('text').data(labels, ({ key }) => key).join('text'), {
    class: ({ key }) => `${key}-text`,
    y: ({ words }, index) => middles[index]! - ((linesIn(words).length - 1) * line) / 2 + textPx * 0.35,
  }).each(function lined({ words }) {
    writeLines(this, linesIn(words), x, line, 'down');
  });
}

function linesIn(words: readonly string[]): string[] {
  return words.flatMap((text) => linesOf(text, MOST_LETTERS));
}
