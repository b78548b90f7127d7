import { say, write, type Layer } from './described.ts';
import { textBox } from './measured-text.ts';
import { placeLabel, type Box, type Taken } from './place-label.ts';
import type { PlaneSpread } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';
import { halfBoxM, turnedAt } from './turned-ellipse.ts';

/** Draws the spread as an outline, named where it covers least; none leaves none. Gives the box of its name. */
export function drawSpread(layer: Layer, spread: PlaneSpread | null, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Box[] {
  const spreads = spread === null ? [] : [spread];
  write(layer.selectAll<SVGEllipseElement, PlaneSpread>('ellipse').data(spreads).join('ellipse'), {
    class: () => 'spread-outline',
    rx: (d) => d.semiMajorM * scale.pxPerM, ry: (d) => d.semiMinorM * scale.pxPerM,
    transform: (d) => turnedAt(scale.x(d.armSideM), scale.y(d.verticalM), d.angleRad, scale),
  });
  const name = write(layer.selectAll<SVGTextElement, PlaneSpread>('text').data(spreads).join('text'), { class: () => 'spread-text' });
  say(name, (d) => d.named);
  if (spread === null) return [];
  const { width, height, y } = textBox(name.node()!, textPx);
  const centre = { x: scale.x(spread.armSideM), y: scale.y(spread.verticalM) };
  const { tallM, wideM } = halfBoxM(spread);
  const tall = tallM * scale.pxPerM + textPx * 0.2;
  const wide = wideM * scale.pxPerM + textPx * 0.3;
  const wishes = [centre.x - width / 2, centre.x, centre.x - width].flatMap((x) => [{ x, y: centre.y + tall }, { x, y: centre.y - tall - height }]);
  const box = placeLabel({ width, height }, centre, [...wishes, { x: centre.x + wide, y: centre.y - height / 2 }, { x: centre.x - wide - width, y: centre.y - height / 2 }], bounds, taken);
  write(name, { transform: () => `translate(${box.x},${box.y - y})` });
  return [box];
}
