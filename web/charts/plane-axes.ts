import type { Layer } from './described.ts';
import { linesOf, writeLines } from './lines.ts';
import { lettersNow } from './measured-text.ts';
import { coveredArea, overlap, type Box, type Taken } from './place-label.ts';
import type { PlaneData } from './plane-data.ts';
import { cloudRadius, type PlaneScale } from './plane-scale.ts';
import { ticksBetween } from './ticks.ts';

/** Names longer than this go on to another line. */
const MOST_LETTERS = 10;

/** A tick's words give way to a label. */
const TICKS_MIND = 0.1;

interface Rule {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly kind: 'tick' | 'end' | 'seen' | 'origin';
  readonly dash: readonly [number, number, number, number] | null;
}

/** What was ruled, and what it covers: a plane is ruled anew only when its scale or its words change, because to measure text is slow. */
interface Ruled {
  readonly key: string;
  readonly taken: readonly Taken[];
  readonly ticks: readonly { readonly node: SVGTextElement; readonly box: Box; readonly clashes: boolean }[];
}
const RULED = new WeakMap<Element, Ruled>();

/** Two lines through the fastball, ruled in the viewer's unit, their ends named. Gives the boxes of its lines and texts. */
export function drawAxes(axes: Layer, data: PlaneData, scale: PlaneScale, { width, height, textPx }: { readonly width: number; readonly height: number; readonly textPx: number }): Taken[] {
  const { originX, originY } = scale;
  const rules = rulesOf(data, scale, width, height, textPx);
  const group = axes.node()!;
  const before = RULED.get(group);
  const key = JSON.stringify([rules, width, height, textPx, lettersNow()]);
  if (before !== undefined && before.key === key) return [...before.taken];
  axes.selectAll<SVGLineElement, readonly number[]>('line.axis')
    .data([[0, originY, width, originY], [originX, 0, originX, height]])
    .join('line').attr('class', 'axis')
    .attr('x1', (d) => d[0]!).attr('y1', (d) => d[1]!).attr('x2', (d) => d[2]!).attr('y2', (d) => d[3]!);
  axes.selectAll<SVGLineElement, Rule>('line.tick').data(rules.filter(({ dash }) => dash !== null), ({ key: name }) => name)
    .join('line').attr('class', 'tick')
    .attr('x1', (d) => d.dash![0]).attr('y1', (d) => d.dash![1]).attr('x2', (d) => d.dash![2]).attr('y2', (d) => d.dash![3]);
  const texts = axes.selectAll<SVGTextElement, Rule>('text').data(rules, ({ key: name }) => name)
    .join('text').attr('class', ({ kind }) => `${kind}-text`)
    .attr('y', ({ y }) => y).attr('text-anchor', ({ anchor }) => anchor)
    .each(function write({ text, x, kind }) {
      writeLines(this, kind === 'tick' ? [text] : linesOf(text, kind === 'end' ? lettersIn(Math.abs(x - originX), textPx) : MOST_LETTERS), x, textPx * 1.05, kind === 'seen' ? 'up' : 'down');
    });
  const lines: Taken[] = [{ x: originX - 6, y: 0, width: 12, height, minds: 0.6 }, { x: 0, y: originY - 6, width, height: 12, minds: 0.6 }];
  const { kept, ticks } = thinned(texts.nodes());
  const taken = [...kept, ...lines];
  RULED.set(group, { key, taken, ticks });
  return [...taken];
}

/** Leaves out the words of a tick that would run into a name or another tick. Gives the boxes of those that stay, and every tick. */
function thinned(nodes: readonly SVGTextElement[]): { readonly kept: Taken[]; readonly ticks: Ruled['ticks'] } {
  const kept: Taken[] = [];
  const ticks = nodes.flatMap((node) => {
    const tick = node.classList.contains('tick-text');
    const box = toBox(node.getBBox());
    const clashes = tick && coveredArea(box, kept) > 0;
    node.classList.toggle('left-out', clashes);
    if (!clashes) kept.push({ ...box, minds: tick ? TICKS_MIND : 1 });
    return tick ? [{ node, box, clashes }] : [];
  });
  return { kept, ticks };
}

/** Leaves out the words of ticks that something of more weight has been drawn over, or that the edge of a region would cut. */
export function giveWay(axes: Layer, written: readonly Box[], regions: readonly Box[]): void {
  const ticks: Ruled['ticks'] = RULED.get(axes.node()!)?.ticks ?? axes.selectAll<SVGTextElement, unknown>('text.tick-text').nodes().map((node) => ({ node, box: node.getBBox(), clashes: node.classList.contains('left-out') }));
  for (const { node, box, clashes } of ticks) {
    // Said once how it is to be: a class that is taken off and put on again is styled anew at each throw.
    node.classList.toggle('left-out', clashes || regions.some((region) => isCut(box, region)) || coveredArea(box, written) > 0);
  }
}

function isCut(box: Box, region: Box): boolean {
  const shared = overlap(box, region);
  return shared > 0 && shared < box.width * box.height * 0.99;
}

function toBox({ x, y, width, height }: Box): Box {
  return { x, y, width, height };
}

/** How many letters fit into some pixels, never more than a name may have in one line. */
function lettersIn(px: number, textPx: number): number {
  return Math.min(MOST_LETTERS, Math.floor((px - textPx * 0.3) / (textPx * 0.5)));
}

function rulesOf({ ruling, texts, hasBaseline, cloud }: PlaneData, scale: PlaneScale, width: number, height: number, textPx: number): Rule[] {
  const { originX, originY, armSign, pxPerM } = scale;
  const dash = textPx * 0.22;
  const gap = textPx * 0.42;
  const away = -armSign;
  const anchorAway = away === 1 ? 'start' : 'end';
  const lowest = (originY - height + textPx * 2.4) / pxPerM;
  const vertical = ticksBetween(lowest, 0, pxPerM, textPx * 2.6, ruling).map(({ si, value }): Rule => ({
    key: `v${value}`, kind: 'tick', text: `${Math.abs(value)} ${ruling.unit}`, anchor: anchorAway,
    x: originX + away * gap, y: scale.y(si) + textPx * 0.35, dash: [originX - dash, scale.y(si), originX + dash, scale.y(si)],
  }));
  const edge = textPx * 1.4;
  const side = [...ticksBetween(-4, 4, pxPerM, textPx * 3.4, ruling)].filter(({ si }) => scale.x(si) > edge && scale.x(si) < width - edge).map(({ si, value }): Rule => ({
    key: `s${value}`, kind: 'tick', text: `${Math.abs(value)} ${ruling.unit}`, anchor: 'middle',
    x: scale.x(si), y: originY - gap, dash: [scale.x(si), originY - dash, scale.x(si), originY + dash],
  }));
  const roomRight = originX < width / 2;
  const below = originY + textPx * 1.1;
  const right = armSign === 1 ? texts.armSide : texts.gloveSide;
  const left = armSign === 1 ? texts.gloveSide : texts.armSide;
  const ends: Rule[] = [
    { key: 'right', kind: 'end', text: right, anchor: 'end', x: width, y: below, dash: null },
    { key: 'left', kind: 'end', text: left, anchor: 'start', x: 0, y: below, dash: null },
    { key: 'down', kind: 'end', text: texts.down, anchor: anchorAway, x: originX + away * gap, y: height - textPx * 0.35, dash: null },
    { key: 'seen', kind: 'seen', text: texts.seenFrom, anchor: roomRight ? 'end' : 'start', x: roomRight ? width : 0, y: height - textPx * 0.35, dash: null },
  ];
  const origin: Rule[] = hasBaseline ? [{ key: 'origin', kind: 'origin', text: texts.fastball, anchor: 'middle', x: originX, y: Math.max(textPx, cloudTop(cloud, scale) - textPx * 0.32), dash: null }] : [];
  return [...ends, ...origin, ...vertical, ...side];
}

function cloudTop(cloud: PlaneData['cloud'], scale: PlaneScale): number {
  return scale.y(Math.max(0, ...cloud.map(([verticalM]) => verticalM))) - cloudRadius(scale);
}
