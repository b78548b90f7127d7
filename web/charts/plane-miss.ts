import { say, write, type Layer } from './described.ts';
import { markRadius } from './plane-marks.ts';
import { textBox } from './measured-text.ts';
import { boxesAlong, placeLabel, type Anchor, type Box, type Taken } from './place-label.ts';
import type { PlaneData } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';

interface Drawn {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A line from the last throw to the nearest edge, with the miss written beside it where it covers least. Gives the boxes of both. */
export function drawMiss(layer: Layer, { miss }: PlaneData, scale: PlaneScale, { textPx }: { readonly textPx: number }, bounds: Box, taken: readonly Taken[]): Box[] {
  const lines: Drawn[] = miss === null ? [] : [fromRim(
    { x1: scale.x(miss.armSideM), y1: scale.y(miss.verticalM), x2: scale.x(miss.armSideM + miss.toEdgeArmSideM), y2: scale.y(miss.verticalM + miss.toEdgeVerticalM) },
    markRadius(textPx, true),
  )];
  write(layer.selectAll<SVGLineElement, Drawn>('line').data(lines).join('line'), { class: () => 'miss-line', x1: (d) => d.x1, y1: (d) => d.y1, x2: (d) => d.x2, y2: (d) => d.y2 });
  const said = write(layer.selectAll<SVGTextElement, Drawn>('text').data(lines).join('text'), { class: () => 'miss-text' });
  if (miss === null) return [];
  const lined = write(said.selectAll<SVGTSpanElement, string>('tspan').data(miss.words).join('tspan'), { x: () => 0, dy: (_, index) => (index === 0 ? '0' : '1.05em') });
  say(lined, (words) => words);
  const { width, height, y } = textBox(said.node()!, textPx);
  const line = lines[0]!;
  const along = boxesAlong(line.x1, line.y1, line.x2, line.y2, textPx * 0.2);
  const box = placeLabel({ width, height }, middleOf(line), wishesAround(line, width, height, markRadius(textPx, true), textPx), bounds, [...taken, ...along]);
  write(said, { transform: () => `translate(${box.x},${box.y - y})` });
  return [box, ...along];
}

/** Begins at the rim of the mark, so that a hollow mark stays hollow. */
function fromRim({ x1, y1, x2, y2 }: Drawn, radius: number): Drawn {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const share = length === 0 ? 0 : Math.min(1, radius / length);
  return { x1: x1 + (x2 - x1) * share, y1: y1 + (y2 - y1) * share, x2, y2 };
}

function middleOf({ x1, y1, x2, y2 }: Drawn): Anchor {
  return { x: (x1 + x2) / 2, y: (y1 + y2) / 2 };
}

/** To either side of the middle of the line, clear of the mark that a short line ends in. */
function wishesAround(line: Drawn, width: number, height: number, radius: number, textPx: number): Anchor[] {
  const { x, y } = middleOf(line);
  const besideLine = textPx * 0.45;
  const besideMark = Math.abs(line.y1 - y) < height ? radius + textPx * 0.2 : 0;
  const right = Math.max(x + besideLine, line.x1 + besideMark);
  const left = Math.min(x - besideLine, line.x1 - besideMark) - width;
  return [right, left].flatMap((start) => [{ x: start, y: y - height }, { x: start, y }, { x: start, y: y - height / 2 }]);
}
