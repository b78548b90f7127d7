import { defaultLaw } from './aerodynamics.ts';
import { plate } from './ball.ts';
import { stateAtY, type ConstantAcceleration, type PathState } from './constant-acceleration.ts';
import type { FittedPath } from './fitted-path.ts';
import { flyPitch, type Flight } from './fly.ts';
import type { Forces } from './motion.ts';
import { transverseCoefficients } from './movement.ts';
import { flightFromSpin, type SpinThrow } from './spin-flight.ts';
import { transverseSpinOf } from './spin-known.ts';
import type { Vector } from './vector.ts';

/** What a device gave of a throw that is to be flown once more. */
export type Reflyable =
  | { readonly kind: 'fitted'; readonly fit: Pick<FittedPath, 'release' | 'spinRadps' | 'forces'> }
  | { readonly kind: 'constant'; readonly path: ConstantAcceleration; readonly releaseYM: number; readonly airDensityKgM3: number }
  | { readonly kind: 'spin'; readonly spinThrow: SpinThrow };

/**
 * The throw as it would fly from the same hand, as fast, in the same direction and with the same spin, over another distance from
 * release to the front of the plate. **For drawing only**: movement is told over the distance that was thrown, and an athlete who
 * stands farther away aims higher. Null where the ball does not get there, or where no spin gives a constant acceleration its push.
 */
export function reflownOver(distanceM: number, thrown: Reflyable): Flight | null {
  switch (thrown.kind) {
    case 'fitted': return flownFrom(thrown.fit.release, thrown.fit.spinRadps, thrown.fit.forces, distanceM);
    case 'constant': return constantOver(distanceM, thrown);
    case 'spin': return flightFromSpin({ ...thrown.spinThrow, distanceM });
  }
}

const noSpin: Vector = [0, 0, 0];

/** Drag and spin are read off the constant acceleration with the default law, and flown by it. */
function constantOver(distanceM: number, { path, releaseYM, airDensityKgM3 }: Extract<Reflyable, { kind: 'constant' }>): Flight | null {
  const release = stateAtY(path, releaseYM);
  const air = transverseCoefficients(path, releaseYM, airDensityKgM3);
  if (release === null || air === null) return null;
  const spinRadps = air.liftCoefficient === 0 ? noSpin : transverseSpinOf(air);
  if (spinRadps === null) return null;
  return flownFrom(release, spinRadps, { airDensityKgM3, law: { ...defaultLaw, dragCoefficient: () => air.dragCoefficient } }, distanceM);
}

function flownFrom({ positionM: [x, , z], velocityMps }: PathState, spinRadps: Vector, forces: Forces, distanceM: number): Flight | null {
  const flight = flyPitch({ positionM: [x, plate.frontYM + distanceM, z], velocityMps, spinRadps }, forces);
  return flight.ending === 'plane' ? flight : null;
}
