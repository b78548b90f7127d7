import type { Grip } from '../core/facts/coach.ts';
import { degToRad, mphToMps } from '../core/units/convert.ts';
import type { PitchShape, Spread } from './athlete.ts';

/** What a grip does to a throw. Invented, of a size that a coach would believe; no published source. */
const SEAM_SHARE: Readonly<Record<Grip['seams'], number>> = { 'one-seam': 1, 'two-seam': 0.3, 'four-seam': 0.1 };
const SPREAD: Readonly<Record<Grip['spread'], { mph: number; rpm: number; scatter: number }>> = {
  together: { mph: 0.4, rpm: 60, scatter: 1 },
  normal: { mph: 0, rpm: 0, scatter: 1 },
  wide: { mph: -0.8, rpm: -150, scatter: 1.2 },
  split: { mph: -1.2, rpm: -420, scatter: 1.5 },
};
const DEPTH: Readonly<Record<Grip['depth'], { mph: number; rpm: number }>> = {
  fingertips: { mph: 0.8, rpm: 80 },
  normal: { mph: 0, rpm: 0 },
  deep: { mph: -1.5, rpm: -130 },
};
const PRESSURE_DEG: Readonly<Record<Grip['pressure'], number>> = { index: 7, middle: 0, ring: -5, even: 0 };
const TILT_DEG_PER_THUMB_DEG = 0.15;
const TILT_DEG_PER_BALL_DEG = 0.1;
const MPH_PER_THUMB_DEG = -0.015;

/** Where the spin axis leaves a ball that is held so: over the waist four seams pass in a turn, over a horseshoe two, and between them one side has more than the other. */
const SEAM_AXIS: Readonly<Record<Grip['seams'], NonNullable<PitchShape['seamAxis']>>> = {
  'four-seam': { latitude: 84, longitude: 10 },
  'two-seam': { latitude: 6, longitude: 42 },
  'one-seam': { latitude: 38, longitude: 72 },
};

/** On the map of the seams, degrees. Invented like the rest, for want of a published source. */
export function seamAxisOf(seams: Grip['seams']): NonNullable<PitchShape['seamAxis']> {
  return SEAM_AXIS[seams];
}

/** The throw of `shape`, which is that of the plainest grip, held in this grip; null is the plainest grip with two seams. */
export function heldIn(shape: PitchShape, grip: Grip | null): PitchShape {
  if (grip === null) return { ...shape, unexplained: lessSeam(shape, SEAM_SHARE['two-seam']), seamAxis: seamAxisOf('two-seam') };
  const spread = SPREAD[grip.spread];
  const depth = DEPTH[grip.depth];
  const turnedDeg = PRESSURE_DEG[grip.pressure] + TILT_DEG_PER_THUMB_DEG * grip.thumbDeg + TILT_DEG_PER_BALL_DEG * grip.tiltDeg;
  const slowerMph = spread.mph + depth.mph + MPH_PER_THUMB_DEG * Math.abs(grip.thumbDeg);
  const changed = (from: Spread, by: number): Spread => ({ mean: from.mean + by, sd: from.sd * spread.scatter });
  return {
    ...shape,
    speedMps: changed(shape.speedMps, mphToMps(slowerMph)),
    spinRpm: changed(shape.spinRpm, spread.rpm + depth.rpm),
    tiltRad: changed(shape.tiltRad, degToRad(turnedDeg)),
    efficiency: changed(shape.efficiency, 0),
    unexplained: lessSeam(shape, SEAM_SHARE[grip.seams]),
    seamAxis: seamAxisOf(grip.seams),
  };
}

function lessSeam({ unexplained }: PitchShape, share: number): PitchShape['unexplained'] {
  const less = ({ mean, sd }: Spread): Spread => ({ mean: mean * share, sd: sd * share });
  return { armSide: less(unexplained.armSide), vertical: less(unexplained.vertical) };
}
