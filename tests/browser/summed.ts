import type { ThrowBody } from '../../core/facts/frames.ts';

/** Miles an hour, and inches up and to a right-hander's arm side. */
export type Summed = readonly [speedMph: number, upIn: number, armSideIn: number];

/** Five fastballs of the invented athlete, as a hand throws them. */
export const FIVE_FASTBALLS: readonly Summed[] = [[91.2, 16.1, 7.2], [91.8, 16.9, 6.4], [90.9, 15.4, 7.9], [91.5, 16.4, 6.9], [91, 15.8, 7.5]];

/** A throw as a device sums it up, without its path. */
export function summedUp([speed, up, armSide]: Summed, spin: NonNullable<ThrowBody['spin']>): ThrowBody {
  return { summary: { releaseSpeed: speed, verticalBreak: up, horizontalBreak: -armSide, release: [-1.9, 54.5, 5.9] }, spin };
}
