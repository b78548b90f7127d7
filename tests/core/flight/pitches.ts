import type { Launch } from '../../../core/flight/fly.ts';
import { spinAxisFromTilt, tiltFromClock } from '../../../core/flight/spin.ts';
import { degreeRad, footM, mphMps } from './feet-and-miles.ts';

export interface PitchCard {
  readonly speedMph: number;
  readonly spinRpm: number;
  readonly efficiency: number;
  readonly hours: number;
  readonly elevationDeg: number;
  readonly azimuthDeg: number;
}

export const fastball: PitchCard = { speedMph: 95, spinRpm: 2300, efficiency: 1, hours: 12, elevationDeg: -1.5, azimuthDeg: 0 };
export const tailingFastball: PitchCard = { speedMph: 95, spinRpm: 2300, efficiency: 0.95, hours: 1, elevationDeg: -1.8, azimuthDeg: 1.2 };
export const changeup: PitchCard = { speedMph: 85, spinRpm: 1700, efficiency: 0.95, hours: 2, elevationDeg: -0.6, azimuthDeg: 1.2 };

/** The launch of flight checks: from (0, 55 ft, 6 ft), the axis given as if the ball flew straight at the plate. */
export function launchOf(pitch: PitchCard): Launch {
  const speed = pitch.speedMph * mphMps;
  const e = pitch.elevationDeg * degreeRad;
  const a = pitch.azimuthDeg * degreeRad;
  return {
    positionM: [0, 55 * footM, 6 * footM],
    velocityMps: [speed * Math.cos(e) * Math.sin(a), -speed * Math.cos(e) * Math.cos(a), speed * Math.sin(e)],
    spinRadps: spinAxisFromTilt({ tiltRad: tiltFromClock({ hours: pitch.hours, minutes: 0 }), efficiency: pitch.efficiency, spinRpm: pitch.spinRpm }),
  };
}
