import { aerodynamicConstantPerM } from './aerodynamics.ts';
import { plate } from './ball.ts';
import { timeAtY, type ConstantAcceleration } from './constant-acceleration.ts';

/** Seconds from release to the front of the plate; null when the path does not reach both. */
export function flightTimeS(path: ConstantAcceleration, releaseYM: number, plateYM: number = plate.frontYM): number | null {
  const release = timeAtY(path, releaseYM);
  const arrival = timeAtY(path, plateYM);
  return release === null || arrival === null ? null : arrival - release;
}

/** C_D of a ball about which only its speed is known: a spin of 2000 rpm, near the middle of pitches. */
const typicalDragCoefficient = 0.36;

/**
 * Seconds to cover `distanceM` for a device that gives only a speed: level flight with constant C_D,
 * t = (e^(kx) − 1)/(k·v0), k = K·C_D. Infinity for a ball at rest, x/v0 without air.
 */
export function flightTimeFromSpeedS(
  releaseSpeedMps: number,
  distanceM: number,
  airDensityKgM3: number,
  dragCoefficient: number = typicalDragCoefficient,
): number {
  const decay = aerodynamicConstantPerM(airDensityKgM3) * dragCoefficient;
  if (decay === 0) return distanceM / releaseSpeedMps;
  return Math.expm1(decay * distanceM) / (decay * releaseSpeedMps);
}
