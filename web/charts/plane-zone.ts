import type { Layer } from './described.ts';
import type { Taken } from './place-label.ts';
import type { PlaneScale } from './plane-scale.ts';
import type { PlaneData } from './plane-data.ts';

/** A label may touch the round of the zone, not its middle: between the inscribed box, 0.71, and the outer one. */
const INSCRIBED = 0.88;

/** The target zone as a drawn region, named below it (above where the picture ends). Gives the boxes that a label should spare. */
export function drawZone(layer: Layer, { zone, texts }: PlaneData, scale: PlaneScale, { height, textPx }: { readonly height: number; readonly textPx: number }): Taken[] {
  const zones = zone === null ? [] : [zone];
  layer.selectAll<SVGEllipseElement, unknown>('ellipse').data(zones).join('ellipse').attr('class', 'target-zone')
    .attr('cx', (d) => scale.x(d.armSideM)).attr('cy', (d) => scale.y(d.verticalM))
    .attr('rx', (d) => d.armSideRadiusM * scale.pxPerM).attr('ry', (d) => d.verticalRadiusM * scale.pxPerM);
  const name = layer.selectAll<SVGTextElement, unknown>('text').data(zones).join('text').attr('class', 'target-text').attr('text-anchor', 'middle')
    .attr('x', (d) => scale.x(d.armSideM))
    .attr('y', (d) => {
      const bottom = scale.y(d.verticalM - d.verticalRadiusM) + textPx * 1.05;
      return bottom < height - textPx * 0.3 ? bottom : scale.y(d.verticalM + d.verticalRadiusM) - textPx * 0.4;
    })
    .text(texts.target);
  const inside = zones.map(({ verticalM, armSideM, verticalRadiusM, armSideRadiusM }): Taken => {
    const width = armSideRadiusM * scale.pxPerM * INSCRIBED;
    const tall = verticalRadiusM * scale.pxPerM * INSCRIBED;
    return { x: scale.x(armSideM) - width, y: scale.y(verticalM) - tall, width: width * 2, height: tall * 2, minds: 0.4 };
  });
  return [...name.nodes().map((node) => node.getBBox()), ...inside];
}
