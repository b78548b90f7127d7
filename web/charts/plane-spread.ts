import type { Layer } from './described.ts';
import { placeLabel, type Box, type Taken } from './place-label.ts';
import type { PlaneSpread } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';

/** Draws the spread as an outline, named where it covers least; none leaves none. Gives the box of its name. */
export function drawSpread(layer: Layer, spread: PlaneSpread | null, scale: PlaneScale, textPx: number, bounds: Box, taken: readonly Taken[]): Box[] {
  const spreads = spread === null ? [] : [spread];
  layer.selectAll<SVGEllipseElement, PlaneSpread>('ellipse').data(spreads).join('ellipse').attr('class', 'spread-outline')
    .attr('rx', (d) => d.semiMajorM * scale.pxPerM).attr('ry', (d) => d.semiMinorM * scale.pxPerM)
    .attr('transform', (d) => `translate(${scale.x(d.armSideM)},${scale.y(d.verticalM)}) rotate(${(-scale.armSign * d.angleRad * 180) / Math.PI})`);
  const name = layer.selectAll<SVGTextElement, PlaneSpread>('text').data(spreads).join('text').attr('class', 'spread-text').text((d) => d.named);
  if (spread === null) return [];
  name.attr('transform', null);
  const { width, height, y } = name.node()!.getBBox();
  const centre = { x: scale.x(spread.armSideM), y: scale.y(spread.verticalM) };
  const tall = halfHeightM(spread) * scale.pxPerM + textPx * 0.2;
  const wide = halfWidthM(spread) * scale.pxPerM + textPx * 0.3;
  const wishes = [centre.x - width / 2, centre.x, centre.x - width].flatMap((x) => [{ x, y: centre.y + tall }, { x, y: centre.y - tall - height }]);
  const box = placeLabel({ width, height }, centre, [...wishes, { x: centre.x + wide, y: centre.y - height / 2 }, { x: centre.x - wide - width, y: centre.y - height / 2 }], bounds, taken);
  name.attr('transform', `translate(${box.x},${box.y - y})`);
  return [box];
}

/** Half the height of a turned ellipse. */
function halfHeightM({ semiMajorM, semiMinorM, angleRad }: PlaneSpread): number {
  return Math.hypot(semiMajorM * Math.sin(angleRad), semiMinorM * Math.cos(angleRad));
}

/** Half its width. */
function halfWidthM({ semiMajorM, semiMinorM, angleRad }: PlaneSpread): number {
  return Math.hypot(semiMajorM * Math.cos(angleRad), semiMinorM * Math.sin(angleRad));
}
