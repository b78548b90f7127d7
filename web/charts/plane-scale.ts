import type { TargetZone } from '../../core/facts/coach.ts';
import { inchesToM } from '../../core/units/convert.ts';

/** A separation in metres: vertical, arm side. */
export interface Separation {
  readonly verticalM: number;
  readonly armSideM: number;
}

/** What the plane reaches in metres. Up and arm side are positive. */
export interface Reach {
  readonly upM: number;
  readonly downM: number;
  readonly armSideM: number;
  readonly gloveSideM: number;
}

/** Always shown, so that a first throw does not fill the plane. */
const LEAST: Reach = { upM: inchesToM(4), downM: inchesToM(17), armSideM: inchesToM(11), gloveSideM: inchesToM(6) };
/** Farther than this a throw is drawn at the rim, pointing outwards: one misread must not shrink all others. */
const MOST_M = inchesToM(36);
/** The reach grows in steps, so that the picture seldom moves. */
const STEP_M = inchesToM(3);
const MARGIN_M = inchesToM(1.5);

/** How far the plane reaches to hold these separations and the zone. */
export function reachOf(separations: readonly Separation[], zone: TargetZone | null): Reach {
  const corners = zone === null ? [] : [
    { verticalM: zone.verticalM - zone.verticalRadiusM, armSideM: zone.armSideM - zone.armSideRadiusM },
    { verticalM: zone.verticalM + zone.verticalRadiusM, armSideM: zone.armSideM + zone.armSideRadiusM },
  ];
  const all = [...separations, ...corners];
  const grow = (leastM: number, values: readonly number[]): number => grownTo(values, { leastM, mostM: MOST_M, marginM: MARGIN_M, stepM: STEP_M });
  return {
    upM: grow(LEAST.upM, all.map(({ verticalM }) => verticalM)),
    downM: grow(LEAST.downM, all.map(({ verticalM }) => -verticalM)),
    armSideM: grow(LEAST.armSideM, all.map(({ armSideM }) => armSideM)),
    gloveSideM: grow(LEAST.gloveSideM, all.map(({ armSideM }) => -armSideM)),
  };
}

/** How far a picture reaches to hold these distances and a margin, up to the most: the least, or so many steps more. */
export function grownTo(distancesM: readonly number[], { leastM, mostM, marginM, stepM }: { readonly leastM: number; readonly mostM: number; readonly marginM: number; readonly stepM: number }): number {
  const neededM = Math.min(mostM, Math.max(0, ...distancesM) + marginM);
  return neededM <= leastM ? leastM : leastM + Math.ceil((neededM - leastM) / stepM - 1e-9) * stepM;
}

/** From metres of separation to pixels and back: one scale for both directions, so that distances on the picture are true. */
export interface PlaneScale {
  readonly pxPerM: number;
  readonly originX: number;
  readonly originY: number;
  /** +1 where arm side lies to the right, −1 where it lies to the left. */
  readonly armSign: 1 | -1;
  readonly x: (armSideM: number) => number;
  readonly y: (verticalM: number) => number;
  readonly separationAt: (x: number, y: number) => Separation;
}

/** Fits a reach into a picture. What room is left over goes to both sides alike, below the origin first. */
export function planeScale(reach: Reach, width: number, height: number, armSign: 1 | -1): PlaneScale {
  const across = reach.armSideM + reach.gloveSideM;
  const along = reach.upM + reach.downM;
  const pxPerM = Math.max(1, Math.min(width / across, height / along));
  const spareX = (width - across * pxPerM) / 2;
  const left = armSign === 1 ? reach.gloveSideM : reach.armSideM;
  const originX = spareX + left * pxPerM;
  const originY = reach.upM * pxPerM;
  return {
    pxPerM, originX, originY, armSign,
    x: (armSideM) => originX + armSign * armSideM * pxPerM,
    y: (verticalM) => originY - verticalM * pxPerM,
    separationAt: (x, y) => ({ armSideM: ((x - originX) / pxPerM) * armSign, verticalM: (originY - y) / pxPerM }),
  };
}

/** Radius in pixels at which a fastball of the cloud is drawn: about an inch, so that neighbours run together. */
export function cloudRadius({ pxPerM }: PlaneScale): number {
  return Math.max(6, inchesToM(0.9) * pxPerM);
}
