import { layer, pictureOf, put, sized } from './described.ts';
import { planeReach, scaleOf } from './plain-plane.ts';
import { drawMarks } from './plane-marks.ts';
import { reachOf } from './plane-scale.ts';
import type { PlaneData, PlaneMark, PlaneOptions } from './plane-data.ts';

/**
 * Puts the marks of throws that a plane does not hold yet where they will stand on it; none where the plane has to be ruled anew for
 * them. They lie over it on a picture of their own, because all marks of a picture are painted whenever one of them comes.
 * @param plane what the plane below is drawn from
 * @param coming the marks that it lacks; none takes away what was put here
 */
export function putComing(element: SVGSVGElement, plane: PlaneData, coming: readonly PlaneMark[], options: PlaneOptions): void {
  const svg = pictureOf(element, 'coming-marks');
  sized(svg, options);
  put(element, 'aria-hidden', 'true');
  svg.style('font-size', `${options.textPx}px`);
  drawMarks(layer(svg, 'marks'), isRuledFor(plane, coming) ? coming : [], scaleOf(plane, options), options);
}

function isRuledFor(plane: PlaneData, coming: readonly PlaneMark[]): boolean {
  const [now, then] = [planeReach(plane), reachOf(coming, null)];
  return then.upM <= now.upM && then.downM <= now.downM && then.armSideM <= now.armSideM && then.gloveSideM <= now.gloveSideM;
}
