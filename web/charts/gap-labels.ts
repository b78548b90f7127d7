import type { Layer } from './described.ts';
import type { GapLineData, GapLineOptions, GapScale } from './gap-scale.ts';
import { textBox } from './measured-text.ts';
import { boxesAlong, coveredArea, placeLabel, type Anchor, type Box, type Taken } from './place-label.ts';

interface Flag {
  readonly kind: 'decision' | 'plate';
  readonly x: number;
  readonly y: number;
  readonly words: readonly [value: string, place: string];
}
interface Sized extends Flag {
  readonly size: Box;
}
interface Planted extends Flag {
  readonly box: Box;
  /** Square pixels of other things under it. */
  readonly covers: number;
}

const LINE = 1.08;
/** Free places are looked for straight up, in steps of half a text size. */
const STEPS_UP = 24;

/** Writes the two values like flags above their points, each on a pole that ends at the line; neither covers line, balls or the other. */
export function drawGapLabels(group: Layer, data: GapLineData, scale: GapScale, { width, textPx }: GapLineOptions): void {
  const flags: Flag[] = [
    { kind: 'decision', x: scale.x(data.decisionS), y: scale.y(data.decisionWidths), words: data.texts.decision },
    { kind: 'plate', x: scale.x(scale.endS), y: scale.y(data.plateWidths), words: data.texts.plate },
  ];
  const texts = group.selectAll<SVGTextElement, Flag>('text').data(flags, ({ kind }) => kind)
    .join((enter) => {
      const text = enter.append('text').attr('class', ({ kind }) => `gap-text ${kind}`);
      text.append('tspan').attr('class', 'gap-value');
      text.append('tspan').attr('class', 'gap-place').attr('dy', `${LINE}em`);
      return text;
    });
  texts.selectAll<SVGTSpanElement, string>('tspan').data(({ words }) => [...words]).attr('x', 0).text((words) => words);
  const sizes = texts.nodes().map((text) => textBox(text, textPx));
  const planted = plantBest(flags.map((flag, index) => ({ ...flag, size: sizes[index]! })), { x: 0, y: 0, width, height: scale.y(0) }, takenBy(data, scale, textPx), textPx);
  texts.attr('transform', (_, index) => `translate(${planted[index]!.box.x},${planted[index]!.box.y - sizes[index]!.y})`);
  const poles = planted.filter(({ box, y }) => y - box.y - box.height > textPx * 0.4);
  group.selectAll<SVGLineElement, Planted>('line').data(poles, ({ kind }) => kind).join((enter) => enter.insert('line', 'text')).attr('class', 'pole')
    .attr('x1', ({ x }) => x).attr('x2', ({ x }) => x).attr('y1', ({ y }) => y - textPx * 0.3).attr('y2', ({ box }) => box.y + box.height + textPx * 0.02);
}

/** In the order of time each flag stands nearest to its point; where one then finds no room, the plate's goes first. */
function plantBest(flags: readonly Sized[], bounds: Box, covered: readonly Taken[], textPx: number): Planted[] {
  const inTime = plant(flags, bounds, covered, textPx);
  const plateFirst = plant([...flags].reverse(), bounds, covered, textPx).reverse();
  const covers = (planted: readonly Planted[]): number => planted.reduce((sum, flag) => sum + flag.covers, 0);
  return covers(plateFirst) < covers(inTime) ? plateFirst : inTime;
}

function plant(flags: readonly Sized[], bounds: Box, covered: readonly Taken[], textPx: number): Planted[] {
  const taken = [...covered];
  const planted: Box[] = [];
  return flags.map((flag) => {
    const box = placeLabel(flag.size, flag, wishesUp(flag, flag.size, textPx), bounds, taken);
    const pole = poleOf(flag, box, textPx);
    const covers = coveredArea(box, taken) + coveredArea(pole, planted);
    taken.push(box, pole);
    planted.push(box);
    return { ...flag, box, covers };
  });
}

/** The room of a pole: no other flag comes close to it. */
function poleOf({ x, y }: Anchor, { y: top, height }: Box, textPx: number): Box {
  return { x: x - textPx * 0.35, y: top + height, width: textPx * 0.7, height: Math.max(0, y - top - height) };
}

/** Higher and higher above the point: leaning left, in the middle, leaning right. */
function wishesUp({ x, y }: Anchor, { width, height }: { readonly width: number; readonly height: number }, textPx: number): Anchor[] {
  return Array.from({ length: STEPS_UP }, (_, step) => y - height - textPx * (0.3 + step / 2)).flatMap((top) => [
    { x: x - width + textPx * 0.4, y: top }, { x: x - width / 2, y: top }, { x: x - textPx * 0.4, y: top },
  ]).filter(({ y: top }) => top >= 0);
}

function takenBy({ line, decisionS, decisionWidths, plateWidths }: GapLineData, { x, y, ballPx, endS }: GapScale, textPx: number): Taken[] {
  const along = line.slice(1).flatMap(([timeS, widths], index) => boxesAlong(x(line[index]![0]), y(line[index]![1]), x(timeS), y(widths), textPx * 0.4));
  const column = (timeS: number, widths: number): Taken => ({ x: x(timeS) - ballPx / 2, y: y(widths), width: ballPx, height: widths * ballPx });
  return [...along.filter((box) => Number.isFinite(box.x + box.y)), column(decisionS, decisionWidths), column(endS, plateWidths)];
}
