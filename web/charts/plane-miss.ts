import type { Layer } from './described.ts';
import { placeLabel, type Box } from './place-label.ts';
import type { PlaneData } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';

interface Drawn {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A line from the last throw to the nearest edge, with the miss written beside it where it covers least. */
export function drawMiss(layer: Layer, { miss }: PlaneData, scale: PlaneScale, { textPx }: { readonly textPx: number }, bounds: Box, taken: readonly Box[]): void {
  const lines: Drawn[] = miss === null ? [] : [{
    x1: scale.x(miss.armSideM), y1: scale.y(miss.verticalM),
    x2: scale.x(miss.armSideM + miss.toEdgeArmSideM), y2: scale.y(miss.verticalM + miss.toEdgeVerticalM),
  }];
  layer.selectAll<SVGLineElement, Drawn>('line').data(lines).join('line').attr('class', 'miss-line')
    .attr('x1', (d) => d.x1).attr('y1', (d) => d.y1).attr('x2', (d) => d.x2).attr('y2', (d) => d.y2);
  const said = layer.selectAll<SVGTextElement, Drawn>('text').data(lines).join('text').attr('class', 'miss-text');
  if (miss === null) return;
  said.selectAll<SVGTSpanElement, string>('tspan').data(miss.words).join('tspan')
    .attr('x', 0).attr('dy', (_, index) => (index === 0 ? '0' : '1.05em')).text((words) => words);
  said.attr('transform', null);
  const { width, height, y } = said.node()!.getBBox();
  const box = placeLabel(wishesAround(lines[0]!, width, height, textPx * 0.6), bounds, [...taken, boxOf(lines[0]!)]);
  said.attr('transform', `translate(${box.x},${box.y - y})`);
}

/** Beside the middle of the line, then beside the throw, then above and below. */
function wishesAround({ x1, y1, x2, y2 }: Drawn, width: number, height: number, gap: number): Box[] {
  const mid = { x: (x1 + x2) / 2, y: (y1 + y2) / 2 };
  const beside = (x: number, y: number): Box[] => [
    { x: x + gap, y: y - height / 2, width, height },
    { x: x - gap - width, y: y - height / 2, width, height },
  ];
  return [
    ...beside(mid.x, mid.y),
    ...beside(x1, y1),
    ...[-1, 1].flatMap((way) => [0.5, 0, 1].map((part) => ({ x: x1 - width * part, y: y1 + (way === -1 ? -gap - height : gap), width, height }))),
  ];
}

function boxOf({ x1, y1, x2, y2 }: Drawn): Box {
  return { x: Math.min(x1, x2) - 4, y: Math.min(y1, y2) - 4, width: Math.abs(x1 - x2) + 8, height: Math.abs(y1 - y2) + 8 };
}
