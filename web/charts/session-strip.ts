import { group, select } from 'd3';
import { layer, type Layer } from './described.ts';
import { stripMarkPath, stripScale, type FoldedQuiet, type SessionStripData, type StripOptions, type StripScale, type StripThrow } from './strip-scale.ts';

/**
 * Draws every throw as a tick over the track of the timeline: filled on target, hollow when missed, a low line for a fastball,
 * a cross when excluded, its trial's letter above, flags for bookmarks and notes below. The track is dotted where quiet is folded.
 */
export function drawSessionStrip(element: SVGSVGElement, data: SessionStripData, options: StripOptions): void {
  const svg = select(element).classed('session-strip', true).style('font-size', `${options.textPx}px`)
    .attr('viewBox', `0 0 ${options.width} ${options.height}`).attr('width', options.width).attr('height', options.height).attr('aria-hidden', 'true');
  const scale = stripScale(data, options);
  drawPart(layer(svg, 'part'), data, scale);
  drawTrack(layer(svg, 'track'), data, scale);
  drawTicks(layer(svg, 'ticks'), data.throws, scale);
  drawRuns(layer(svg, 'runs'), data.throws, scale, options.textPx);
  drawFlags(layer(svg, 'flags'), data, scale);
}

/** The throw whose tick is nearest to a point of the strip; null without throws. */
export function throwNear(data: SessionStripData, options: StripOptions, x: number): number | null {
  const { x: at } = stripScale(data, options);
  const nearest = data.throws.reduce<StripThrow | null>((best, one) => (best === null || Math.abs(at(one.atMs) - x) < Math.abs(at(best.atMs) - x) ? one : best), null);
  return nearest?.place ?? null;
}

function drawPart(group: Layer, { part }: SessionStripData, { x, height }: StripScale): void {
  group.selectAll<SVGPathElement, NonNullable<typeof part>>('path').data(part === null ? [] : [part]).join('path')
    .attr('d', ({ fromMs, toMs }) => {
      const [left, right] = [x(fromMs) - 4, Math.max(x(toMs), x(fromMs)) + 4];
      return `M${left + 5},1H${left}V${height - 1}H${left + 5}M${right - 5},1H${right}V${height - 1}H${right - 5}`;
    });
}

function drawTrack(group: Layer, { lengthMs, folded }: SessionStripData, { x, trackY, flagY }: StripScale): void {
  const ends = [0, ...folded.flatMap(({ fromMs, toMs }) => [fromMs, toMs]), lengthMs];
  const stretches = ends.slice(1).map((toMs, index) => ({ fromMs: ends[index]!, toMs, quiet: index % 2 === 1 })).filter(({ fromMs, toMs }) => toMs > fromMs);
  group.selectAll<SVGLineElement, (typeof stretches)[number]>('line').data(stretches).join('line')
    .attr('class', ({ quiet }) => (quiet ? 'folded' : 'real')).attr('x1', ({ fromMs }) => x(fromMs)).attr('x2', ({ toMs }) => x(toMs)).attr('y1', trackY).attr('y2', trackY);
  const told = withRoom(folded.filter(({ said }) => said !== null), ({ fromMs, toMs }) => x((fromMs + toMs) / 2), 52);
  group.selectAll<SVGTextElement, FoldedQuiet>('text').data(told).join('text').attr('text-anchor', 'middle')
    .attr('x', ({ fromMs, toMs }) => x((fromMs + toMs) / 2)).attr('y', flagY + 5).text(({ said }) => said);
}

/** Ticks that look alike are one path: ten thousand elements keep a browser busy for longer than everything else on the screen. */
function drawTicks(ticks: Layer, throws: readonly StripThrow[], scale: StripScale): void {
  ticks.selectAll<SVGPathElement, [string, StripThrow[]]>('path').data([...group(throws, lookOf)], ([look]) => look)
    .join('path')
    .attr('class', ([look]) => look)
    .attr('data-throws', ([, alike]) => alike.length)
    .attr('data-place', ([, [first]]) => (first!.held ? first!.place : null))
    .attr('d', ([, alike]) => alike.map((one) => stripMarkPath(one, scale)).join(''));
}

function lookOf({ excluded, fastball, onTarget, held }: StripThrow): string {
  const kind = excluded ? 'excluded' : fastball ? 'fastball' : onTarget === null ? 'worked not-judged' : onTarget ? 'worked on-target' : 'worked missed';
  return held ? `${kind} held` : kind;
}

interface Run {
  readonly letter: string;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Throws of one trial that follow each other, whatever else was thrown in between. */
function runsOf(throws: readonly StripThrow[]): Run[] {
  const runs: Run[] = [];
  for (const { letter, atMs, fastball } of throws) {
    if (letter === null || fastball) continue;
    const last = runs.at(-1);
    if (last?.letter === letter) runs[runs.length - 1] = { ...last, toMs: atMs };
    else runs.push({ letter, fromMs: atMs, toMs: atMs });
  }
  return runs;
}

function drawRuns(group: Layer, throws: readonly StripThrow[], { x, letterY }: StripScale, textPx: number): void {
  const runs = withRoom(runsOf(throws), ({ fromMs, toMs }) => (x(fromMs) + x(toMs)) / 2, textPx * 0.9);
  group.selectAll<SVGTextElement, Run>('text').data(runs).join('text').attr('text-anchor', 'middle')
    .attr('x', ({ fromMs, toMs }) => (x(fromMs) + x(toMs)) / 2).attr('y', letterY).text(({ letter }) => letter);
  const sides = runs.flatMap(({ fromMs, toMs }) => {
    const half = (x(toMs) - x(fromMs)) / 2 - textPx * 0.6;
    return half < textPx * 0.4 ? [] : [[x(fromMs), x(fromMs) + half], [x(toMs) - half, x(toMs)]];
  });
  group.selectAll<SVGLineElement, number[]>('line').data(sides).join('line').attr('y1', letterY - textPx * 0.35).attr('y2', letterY - textPx * 0.35)
    .attr('x1', ([from]) => from!).attr('x2', ([, to]) => to!);
}

/** A bookmark is a pennant, a note a small page. */
function drawFlags(group: Layer, { throws, notes }: SessionStripData, { x, flagY }: StripScale): void {
  const flags = [
    ...throws.filter(({ noted }) => noted).map(({ atMs }) => ({ kind: 'note', atMs })),
    ...notes.map(({ atMs }) => ({ kind: 'note', atMs })),
    ...throws.filter(({ bookmarked }) => bookmarked).map(({ atMs }) => ({ kind: 'bookmark', atMs })),
  ];
  group.selectAll<SVGPathElement, (typeof flags)[number]>('path').data(flags).join('path').attr('class', ({ kind }) => kind)
    .attr('transform', ({ atMs }) => `translate(${x(atMs)},${flagY})`)
    .attr('d', ({ kind }) => (kind === 'bookmark' ? 'M-4.5,-6H4.5V6L0,2L-4.5,6Z' : 'M-4,-5H4V5H-4ZM-1.8,-1.8H1.8M-1.8,1.4H1.8'));
}

/** Left to right, those that stand at least so far from the one before. */
function withRoom<T>(all: readonly T[], at: (one: T) => number, leastPx: number): T[] {
  const kept: T[] = [];
  for (const one of all) {
    const last = kept.at(-1);
    if (last === undefined || at(one) - at(last) >= leastPx) kept.push(one);
  }
  return kept;
}
