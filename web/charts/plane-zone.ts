import type { TargetZone } from '../../core/facts/coach.ts';
import { say, write, type Layer } from './described.ts';
import { textBox } from './measured-text.ts';
import { placeLabel, type Anchor, type Box, type Taken } from './place-label.ts';
import type { PlaneScale } from './plane-scale.ts';
import type { PlaneData } from './plane-data.ts';

/** A label may touch the round of the zone, not its middle: between the inscribed box, 0.71, and the outer one. */
const INSCRIBED = 0.95;

/** The target zone as a drawn region, named where it covers least. Gives the boxes that another label should spare. */
export function drawZone(layer: Layer, { zone, texts }: PlaneData, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Taken[] {
  const zones = zone === null ? [] : [zone];
  write(layer.selectAll<SVGEllipseElement, TargetZone>('ellipse').data(zones).join('ellipse'), {
    class: () => 'target-zone',
    cx: (d) => scale.x(d.armSideM), cy: (d) => scale.y(d.verticalM),
    rx: (d) => d.armSideRadiusM * scale.pxPerM, ry: (d) => d.verticalRadiusM * scale.pxPerM,
  });
  const name = write(layer.selectAll<SVGTextElement, TargetZone>('text').data(zones).join('text'), { class: () => 'target-text' });
  say(name, () => texts.target);
  if (zone === null) return [];
  const { width, height, y } = textBox(name.node()!, textPx);
  const inside = insideOf(zone, scale);
  const box = placeLabel({ width, height }, { x: scale.x(zone.armSideM), y: scale.y(zone.verticalM) }, wishesRound(zone, scale, width, height, textPx), bounds, [...taken, inside]);
  write(name, { transform: () => `translate(${box.x},${box.y - y})` });
  return [box, inside];
}

function insideOf({ verticalM, armSideM, verticalRadiusM, armSideRadiusM }: TargetZone, scale: PlaneScale): Taken {
  const wide = armSideRadiusM * scale.pxPerM * INSCRIBED;
  const tall = verticalRadiusM * scale.pxPerM * INSCRIBED;
  return { x: scale.x(armSideM) - wide, y: scale.y(verticalM) - tall, width: wide * 2, height: tall * 2, minds: 0.4 };
}

/** Below, above, to either side. */
function wishesRound({ verticalM, armSideM, verticalRadiusM, armSideRadiusM }: TargetZone, scale: PlaneScale, width: number, height: number, textPx: number): Anchor[] {
  const [x, y] = [scale.x(armSideM), scale.y(verticalM)];
  const [wide, tall] = [armSideRadiusM * scale.pxPerM, verticalRadiusM * scale.pxPerM];
  return [
    { x: x - width / 2, y: y + tall + textPx * 0.05 }, { x: x - width / 2, y: y - tall - height - textPx * 0.05 },
    { x: x + wide + textPx * 0.25, y: y - height / 2 }, { x: x - wide - width - textPx * 0.25, y: y - height / 2 },
  ];
}
