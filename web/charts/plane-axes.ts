import type { Layer } from './described.ts';
import type { Box } from './place-label.ts';
import type { PlaneData } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';
import { ticksBetween } from './ticks.ts';

interface Rule {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly kind: 'tick' | 'end' | 'seen' | 'origin';
  readonly dash: readonly [number, number, number, number] | null;
}

/** Two lines through the fastball, ruled in the viewer's unit, their ends named. Gives the boxes of its texts. */
export function drawAxes(axes: Layer, data: PlaneData, scale: PlaneScale, { width, height, textPx }: { readonly width: number; readonly height: number; readonly textPx: number }): Box[] {
  const { originX, originY } = scale;
  axes.selectAll<SVGLineElement, readonly number[]>('line.axis')
    .data([[0, originY, width, originY], [originX, 0, originX, height]])
    .join('line').attr('class', 'axis')
    .attr('x1', (d) => d[0]!).attr('y1', (d) => d[1]!).attr('x2', (d) => d[2]!).attr('y2', (d) => d[3]!);
  const rules = rulesOf(data, scale, width, height, textPx);
  axes.selectAll<SVGLineElement, Rule>('line.tick').data(rules.filter(({ dash }) => dash !== null), ({ key }) => key)
    .join('line').attr('class', 'tick')
    .attr('x1', (d) => d.dash![0]).attr('y1', (d) => d.dash![1]).attr('x2', (d) => d.dash![2]).attr('y2', (d) => d.dash![3]);
  const texts = axes.selectAll<SVGTextElement, Rule>('text').data(rules, ({ key }) => key)
    .join('text').attr('class', ({ kind }) => `${kind}-text`)
    .attr('x', ({ x }) => x).attr('y', ({ y }) => y).attr('text-anchor', ({ anchor }) => anchor).text(({ text }) => text);
  return texts.nodes().map((node) => node.getBBox());
}

function rulesOf({ ruling, texts, hasBaseline }: PlaneData, scale: PlaneScale, width: number, height: number, textPx: number): Rule[] {
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
  const below = originY + textPx * 1.1;
  const right = armSign === 1 ? texts.armSide : texts.gloveSide;
  const left = armSign === 1 ? texts.gloveSide : texts.armSide;
  const ends: Rule[] = [
    { key: 'right', kind: 'end', text: right, anchor: 'end', x: width, y: below, dash: null },
    { key: 'left', kind: 'end', text: left, anchor: 'start', x: 0, y: below, dash: null },
    { key: 'down', kind: 'end', text: texts.down, anchor: anchorAway, x: originX + away * gap, y: height - textPx * 0.35, dash: null },
    { key: 'seen', kind: 'seen', text: texts.seenFrom, anchor: armSign === 1 ? 'end' : 'start', x: armSign === 1 ? width : 0, y: height - textPx * 0.35, dash: null },
  ];
  const origin: Rule[] = hasBaseline ? [{ key: 'origin', kind: 'origin', text: texts.fastball, anchor: 'middle', x: originX, y: Math.max(textPx, originY - textPx * 1.45), dash: null }] : [];
  return [...vertical, ...side, ...ends, ...origin];
}
