import { layer, type Svg } from './described.ts';
import { drawPlane, type PlaneParts } from './plain-plane.ts';
import type { PlaneData, PlaneOptions } from './plane-data.ts';
import { drawReach, nameReach } from './plane-reach.ts';
import type { PlaneScale } from './plane-scale.ts';
import { drawUnexplained, nameUnexplained } from './plane-unexplained.ts';
import { drawHandles, handleBoxes } from './zone-handles.ts';

const ALL_PARTS: PlaneParts = {
  reach: { draw: drawReach, name: nameReach },
  unexplained: { draw: drawUnexplained, name: nameUnexplained },
  handles: {
    draw: drawGrips,
    boxes: (data, scale, { onZone, textPx }) => (onZone === undefined ? [] : handleBoxes(data.zone, scale, gripRadius(textPx))),
  },
};

/** The separation plane with all that it can show: reach, what spin does not explain, and grips where the zone can be moved. */
export function drawSeparationPlane(element: SVGSVGElement, data: PlaneData, options: PlaneOptions): void {
  drawPlane(element, data, options, ALL_PARTS);
}

function drawGrips(svg: Svg, data: PlaneData, scale: PlaneScale, { onZone, handleTexts, textPx }: PlaneOptions): void {
  if (onZone === undefined || handleTexts === undefined) svg.select('g.handles').remove();
  else drawHandles(layer(svg, 'handles'), data.zone, scale, { onZone, texts: handleTexts, radius: gripRadius(textPx) });
}

/** Of the grips that move and size the zone. */
function gripRadius(textPx: number): number {
  return Math.max(12, textPx * 0.6);
}
