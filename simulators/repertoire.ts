import type { Grip } from '../core/facts/coach.ts';
import type { Intent } from '../core/facts/vocabulary.ts';
import { degToRad, mphToMps } from '../core/units/convert.ts';
import type { PitchShape, SimulatedAthlete, Spread } from './athlete.ts';
import { heldIn } from './grip-effect.ts';

interface Difference {
  readonly mph: number;
  readonly rpm: number;
  readonly tiltDeg: number;
  readonly efficiency: number;
}

/** Against the athlete's own fastball. Invented, within the ranges that are common in the trade. */
const FROM_FASTBALL: Readonly<Record<Exclude<Intent, 'four-seam' | 'changeup' | 'split'>, Difference>> = {
  sinker: { mph: -1, rpm: -180, tiltDeg: 35, efficiency: -0.04 },
  cutter: { mph: -4, rpm: 50, tiltDeg: -25, efficiency: -0.35 },
  curve: { mph: -15, rpm: 200, tiltDeg: -170, efficiency: -0.2 },
  slider: { mph: -9, rpm: 100, tiltDeg: -80, efficiency: -0.5 },
  other: { mph: -6, rpm: -150, tiltDeg: 15, efficiency: -0.1 },
};

/** How this athlete throws what was called. A split is a changeup held with split fingers, whatever else the grip is. */
export function shapeOf(athlete: SimulatedAthlete, intent: Intent, grip: Grip | null): PitchShape {
  switch (intent) {
    case 'four-seam':
      return athlete.fastball;
    case 'changeup':
      return heldIn(athlete.changeup, grip);
    case 'split':
      return heldIn(athlete.changeup, { ...(grip ?? athlete.tried[0].grip), spread: 'split' });
    default:
      return differing(athlete.fastball, FROM_FASTBALL[intent]);
  }
}

function differing(fastball: PitchShape, by: Difference): PitchShape {
  const shifted = (from: Spread, shift: number): Spread => ({ mean: from.mean + shift, sd: from.sd * 1.1 });
  return {
    ...fastball,
    speedMps: shifted(fastball.speedMps, mphToMps(by.mph)),
    spinRpm: shifted(fastball.spinRpm, by.rpm),
    tiltRad: shifted(fastball.tiltRad, degToRad(by.tiltDeg)),
    efficiency: { ...fastball.efficiency, mean: Math.max(0.15, fastball.efficiency.mean + by.efficiency) },
  };
}
