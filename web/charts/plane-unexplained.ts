import type { Layer } from './described.ts';
import { linesOf } from './lines.ts';
import { textBox } from './measured-text.ts';
import { boxesAlong, placeLabel, type Anchor, type Box, type Taken } from './place-label.ts';
import { markRadius } from './plane-marks.ts';
import type { PlaneUnexplained } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';
import { halfBoxM, turnedAt, type TurnedEllipse } from './turned-ellipse.ts';

/** In pixels: from the place that the spin explains to the rim of the throw's mark. */
interface Arrow {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** The throw's place lies outside the ring of its own mark, so that there is a shaft to see. */
  readonly long: boolean;
}

/** Words longer than this go on to another line. */
const MOST_LETTERS = 14;
type Doubt = TurnedEllipse & Anchor;

/** Half the width of the arrowhead, and its length, in text sizes. */
const HEAD = 0.26;

/**
 * An arrow from where the spin alone would have taken the last throw to where it went, with the 95 % ellipse of that
 * difference at its foot: an arrow that leaves its ellipse is more than the instrument's and the model's doubt. Gives what names
 * should spare.
 */
export function drawUnexplained(layer: Layer, unexplained: PlaneUnexplained | null, scale: PlaneScale, textPx: number): Taken[] {
  const shown = unexplained === null ? [] : [unexplained];
  const arrows = shown.map((each) => arrowOf(each, scale, markRadius(textPx, true)));
  const doubts = shown.flatMap(({ ellipse, from }) => (ellipse === null ? [] : [{ ...ellipse, x: scale.x(from.armSideM), y: scale.y(from.verticalM) }]));
  layer.selectAll<SVGEllipseElement, Doubt>('ellipse').data(doubts).join('ellipse').attr('class', 'doubt')
    .attr('rx', ({ semiMajorM }) => semiMajorM * scale.pxPerM).attr('ry', ({ semiMinorM }) => semiMinorM * scale.pxPerM)
    .attr('transform', ({ x, y, angleRad }) => turnedAt(x, y, angleRad, scale));
  layer.selectAll<SVGPathElement, Arrow>('path').data(arrows).join('path').attr('class', 'unexplained-arrow').attr('d', (arrow) => pathOf(arrow, textPx));
  return [...arrows.flatMap(({ x1, y1, x2, y2 }) => boxesAlong(x1, y1, x2, y2, textPx * 0.3)), ...doubts.map((doubt) => aroundDoubt(doubt, scale))];
}

/** Names the arrow near its foot, where the name covers least; without words it goes unnamed. Gives the box of the name. */
export function nameUnexplained(layer: Layer, unexplained: PlaneUnexplained | null, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Box[] {
  const named = unexplained === null || unexplained.words.length === 0 ? [] : [unexplained];
  const said = layer.selectAll<SVGTextElement, PlaneUnexplained>('text').data(named).join('text').attr('class', 'unexplained-text');
  if (named[0] === undefined) return [];
  said.selectAll<SVGTSpanElement, string>('tspan').data(named[0].words.flatMap((words) => linesOf(words, MOST_LETTERS))).join('tspan')
    .attr('x', 0).attr('dy', (_, index) => (index === 0 ? '0' : '1.05em')).text((words) => words);
  const { width, height, y } = textBox(said.node()!, textPx);
  const arrow = arrowOf(named[0], scale, markRadius(textPx, true));
  const box = placeLabel({ width, height }, { x: arrow.x1, y: arrow.y1 }, wishesBehind(arrow, width, height, textPx), bounds, taken);
  said.attr('transform', `translate(${box.x},${box.y - y})`);
  return [box];
}

function arrowOf({ from, to }: PlaneUnexplained, scale: PlaneScale, radius: number): Arrow {
  const [x1, y1, x, y] = [scale.x(from.armSideM), scale.y(from.verticalM), scale.x(to.armSideM), scale.y(to.verticalM)];
  const length = Math.hypot(x - x1, y - y1);
  const share = length === 0 ? 0 : Math.max(0, 1 - radius / length);
  return { x1, y1, x2: x1 + (x - x1) * share, y2: y1 + (y - y1) * share, long: share > 0 };
}

/** A small cross at the foot, a shaft, an open head. */
function pathOf({ x1, y1, x2, y2, long }: Arrow, textPx: number): string {
  const arm = textPx * 0.13;
  const foot = `M${x1 - arm},${y1 - arm}L${x1 + arm},${y1 + arm}M${x1 - arm},${y1 + arm}L${x1 + arm},${y1 - arm}`;
  if (!long) return foot;
  const angle = Math.atan2(y2 - y1, x2 - x1);
  const barb = (turn: number): string => `${x2 - Math.cos(angle + turn) * textPx * HEAD},${y2 - Math.sin(angle + turn) * textPx * HEAD}`;
  return `${foot}M${x1},${y1}L${x2},${y2}M${barb(0.5)}L${x2},${y2}L${barb(-0.5)}`;
}

/** Behind the foot, away from where the arrow points; then above, below and to either side of it. */
function wishesBehind({ x1, y1, x2, y2 }: Arrow, width: number, height: number, textPx: number): Anchor[] {
  const gap = textPx * 0.4;
  const right = { x: x1 + gap, y: y1 - height / 2 };
  const left = { x: x1 - gap - width, y: y1 - height / 2 };
  const above = { x: x1 - width / 2, y: y1 - gap - height };
  const below = { x: x1 - width / 2, y: y1 + gap };
  const sides = x2 > x1 ? [left, right] : [right, left];
  const ends = y2 > y1 ? [above, below] : [below, above];
  return Math.abs(x2 - x1) > Math.abs(y2 - y1) ? [...sides, ...ends] : [...ends, ...sides];
}

/** An ellipse may be touched by a name, not filled by it. */
function aroundDoubt(doubt: Doubt, { pxPerM }: PlaneScale): Taken {
  const { x, y } = doubt;
  const { tallM, wideM } = halfBoxM(doubt);
  const [wide, tall] = [wideM * pxPerM, tallM * pxPerM];
  return { x: x - wide, y: y - tall, width: wide * 2, height: tall * 2, minds: 0.5 };
}
