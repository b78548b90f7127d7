import { separationBySpin, type Arm, type ArmThrow, type Separation } from './arm.ts';

/**
 * The region of the separation plane that the Magnus force alone can reach: inside `outline` and outside `hole`. An arm that spins
 * every throw can not leave it without movement, so there usually is a hole about the place of no lift; null where there is none.
 * Both run clockwise from tilt 12:00; the last point joins the first.
 */
export interface ReachRegion {
  readonly outline: readonly Separation[];
  readonly hole: readonly Separation[] | null;
}

const turn = 2 * Math.PI;
/** An arc of so many corners is within 0.15 % of its circle: under 1 mm for the movement of a changeup. */
const corners = 64;

/** Half a corner past the full hours, so that no corner lies where two throws are as far as each other: left and right stay alike. */
function tiltOf(corner: number): number {
  return ((corner + 0.5) / corners) * turn;
}

/**
 * Sweeps the tilt round the clock with real flights: the most transverse spin gives the outline, the least the hole, each at both
 * ends of the speeds and with the gyro part either way, because drag and the bend of the flight shift them by up to an inch. Of the throws with
 * one tilt the outline takes the one that gets farthest along it and the hole the one that gets least far, so the region is that of
 * every speed in the span, not of the middle one. A hull would fill the hole. Null when the arm's slowest ball does not get to the plate.
 */
export function reachRegion(arm: Arm): ReachRegion | null {
  const outline: Separation[] = [];
  const inner: Separation[] = [];
  for (let corner = 0; corner < corners; corner += 1) {
    const tiltRad = tiltOf(corner);
    const most = reached(arm, tiltRad, arm.spinRpm.high, arm.efficiency.high);
    const least = reached(arm, tiltRad, arm.spinRpm.low, arm.efficiency.low);
    if (most === null || least === null) return null;
    outline.push(farthest(most, tiltRad));
    inner.push(farthest(least, tiltRad + Math.PI));
  }
  return { outline, hole: isRing(inner, outline) ? inner : null };
}

/** Where throws of one tilt end, at both ends of the speeds, with the gyro part either way. */
function reached(arm: Arm, tiltRad: number, spinRpm: number, efficiency: number): Separation[] | null {
  const found: Separation[] = [];
  const signs: readonly ArmThrow['gyroSign'][] = efficiency < 1 ? [1, -1] : [1];
  for (const speedMps of [arm.speedMps.low, arm.speedMps.high]) {
    for (const gyroSign of signs) {
      const separation = separationBySpin(arm, { speedMps, spinRpm, efficiency, tiltRad, gyroSign });
      if (separation === null) return null;
      found.push(separation);
    }
  }
  return found;
}

function along({ verticalM, armSideM }: Separation, tiltRad: number): number {
  return verticalM * Math.cos(tiltRad) + armSideM * Math.sin(tiltRad);
}

function farthest(found: readonly Separation[], tiltRad: number): Separation {
  return found.reduce((best, next) => (along(next, tiltRad) > along(best, tiltRad) ? next : best));
}

/** Whether the least movement of every tilt lies on its own side of the middle: else the region has no hole. */
function isRing(inner: readonly Separation[], outline: readonly Separation[]): boolean {
  const middle = {
    verticalM: outline.reduce((sum, { verticalM }) => sum + verticalM, 0) / corners,
    armSideM: outline.reduce((sum, { armSideM }) => sum + armSideM, 0) / corners,
  };
  return inner.every((point, corner) => {
    const tiltRad = tiltOf(corner);
    return along(point, tiltRad) > along(middle, tiltRad);
  });
}
