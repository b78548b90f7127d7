import type { Layer } from './described.ts';
import type { PlaneSpread } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';

/** Draws the spread as an outline; none leaves none. */
export function drawSpread(layer: Layer, spread: PlaneSpread | null, scale: PlaneScale, textPx: number): void {
  const spreads = spread === null ? [] : [spread];
  layer.selectAll<SVGEllipseElement, PlaneSpread>('ellipse').data(spreads).join('ellipse').attr('class', 'spread-outline')
    .attr('rx', (d) => d.semiMajorM * scale.pxPerM).attr('ry', (d) => d.semiMinorM * scale.pxPerM)
    .attr('transform', (d) => `translate(${scale.x(d.armSideM)},${scale.y(d.verticalM)}) rotate(${(-scale.armSign * d.angleRad * 180) / Math.PI})`);
  layer.selectAll<SVGTextElement, PlaneSpread>('text').data(spreads).join('text').attr('class', 'spread-text').attr('text-anchor', 'middle')
    .attr('x', (d) => scale.x(d.armSideM))
    .attr('y', (d) => scale.y(d.verticalM) - halfHeightM(d) * scale.pxPerM - textPx * 0.35)
    .text((d) => d.named);
}

/** Half the height of a turned ellipse. */
function halfHeightM({ semiMajorM, semiMinorM, angleRad }: PlaneSpread): number {
  return Math.hypot(semiMajorM * Math.sin(angleRad), semiMinorM * Math.cos(angleRad));
}
