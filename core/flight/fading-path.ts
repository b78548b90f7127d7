import type { PathState } from './constant-acceleration.ts';
import type { Fading } from './fading-forces.ts';
import type { Vector } from './vector.ts';

type Triple = readonly [number, number, number];

/** A path about a middle moment: place, velocity and acceleration of each axis from the samples, jerk and snap from the air. */
export interface FadingPath {
  readonly middleS: number;
  readonly axes: readonly [Triple, Triple, Triple];
  readonly fading: Fading;
}

type Axis = 0 | 1 | 2;

export function placeOn({ middleS, axes, fading }: FadingPath, axis: Axis, timeS: number): number {
  const t = timeS - middleS;
  const [p, v, a] = axes[axis];
  return p + t * (v + t * (a / 2 + t * (fading.jerkMps3[axis] / 6 + (t * fading.snapMps4[axis]) / 24)));
}

export function accelerationOn({ middleS, axes, fading }: FadingPath, timeS: number): Vector {
  const t = timeS - middleS;
  const along = (axis: Axis): number => axes[axis][2] + t * (fading.jerkMps3[axis] + (t * fading.snapMps4[axis]) / 2);
  return [along(0), along(1), along(2)];
}

export function stateOn(path: FadingPath, timeS: number): PathState {
  const t = timeS - path.middleS;
  const speed = (axis: Axis): number => {
    const [, v, a] = path.axes[axis];
    return v + t * (a + t * (path.fading.jerkMps3[axis] / 2 + (t * path.fading.snapMps4[axis]) / 6));
  };
  return {
    timeS,
    positionM: [placeOn(path, 0, timeS), placeOn(path, 1, timeS), placeOn(path, 2, timeS)],
    velocityMps: [speed(0), speed(1), speed(2)],
  };
}

/** When the path passes the plane, by Newton's method from its middle; null where it does not settle. */
export function crossingOf(path: FadingPath, yM: number): number | null {
  let timeS = path.middleS;
  for (let round = 0; round < 20; round += 1) {
    const { positionM, velocityMps } = stateOn(path, timeS);
    const stepS = (yM - positionM[1]) / velocityMps[1];
    timeS += stepS;
    if (Math.abs(stepS) < 1e-13) break;
  }
  return Math.abs(placeOn(path, 1, timeS) - yM) < 1e-6 ? timeS : null;
}
