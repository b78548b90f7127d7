import { aerodynamicConstantPerM, spinParameterForLift, splitAlong } from './aerodynamics.ts';
import { ball, plate, standardGravityMps2 } from './ball.ts';
import { stateAtY, type ConstantAcceleration } from './constant-acceleration.ts';
import { add, norm, scale, type Vector } from './vector.ts';

export interface InducedBreak {
  /** Up is positive. */
  readonly verticalM: number;
  /** Towards +x, the catcher's right; a right-hander's arm side is negative. */
  readonly horizontalM: number;
  readonly timeS: number;
}

/**
 * Induced break, in the convention **drag kept, release to front of plate**: how far the ball ends from where the same
 * release would have gone under gravity alone in the same time, ½(az+g)t² and ½ax·t². Conventions differ by up to 1.9×
 * on one pitch: never compare with a number of another one. Null when the path does not reach both planes.
 */
export function inducedBreak(path: ConstantAcceleration, releaseYM: number, plateYM: number = plate.frontYM): InducedBreak | null {
  const release = stateAtY(path, releaseYM);
  const arrival = stateAtY(path, plateYM);
  return release && arrival && inducedBreakBetween(release, arrival);
}

interface Moment {
  readonly timeS: number;
  readonly positionM: Vector;
}

/** The same measure, same convention, from the state at release and the place and time of arrival of any flight. */
export function inducedBreakBetween(
  release: Moment & { readonly velocityMps: Vector },
  arrival: Moment,
  gravityMps2: number = standardGravityMps2,
): InducedBreak {
  const timeS = arrival.timeS - release.timeS;
  const fallen = release.positionM[2] + release.velocityMps[2] * timeS - 0.5 * gravityMps2 * timeS * timeS;
  const straight = release.positionM[0] + release.velocityMps[0] * timeS;
  return { verticalM: arrival.positionM[2] - fallen, horizontalM: arrival.positionM[0] - straight, timeS };
}

export interface TransverseCoefficients {
  readonly dragCoefficient: number;
  readonly liftCoefficient: number;
  /** Acceleration across the mean velocity with gravity and drag removed. */
  readonly magnusMps2: Vector;
  /** ½·a_M·t²: drag **removed**. Not comparable with `inducedBreak`. */
  readonly magnusMovement: { readonly verticalM: number; readonly horizontalM: number };
  /** Transverse spin that gives this lift by the default law; null where no spin could. */
  readonly transverseSpinRadps: number | null;
  readonly meanVelocityMps: Vector;
  readonly timeS: number;
}

/**
 * What the air did to a constant-acceleration path between two planes, with drag taken away, for the comparison with spin
 * (Nathan's method, as in Kagan, Phys. Teach. 47:412, 2009): a_drag along the mean velocity, the rest across it.
 * Null when the path does not reach both planes.
 */
export function transverseCoefficients(
  path: ConstantAcceleration,
  releaseYM: number,
  airDensityKgM3: number,
  plateYM: number = plate.frontYM,
  gravityMps2: number = standardGravityMps2,
): TransverseCoefficients | null {
  const release = stateAtY(path, releaseYM);
  const arrival = stateAtY(path, plateYM);
  if (!release || !arrival) return null;
  const timeS = arrival.timeS - release.timeS;
  const meanVelocityMps = scale(add(release.velocityMps, arrival.velocityMps), 0.5);
  const speed = norm(meanVelocityMps);
  const { along, across } = splitAlong(add(path.accelerationMps2, [0, 0, gravityMps2]), meanVelocityMps);
  const perCoefficient = aerodynamicConstantPerM(airDensityKgM3) * speed * speed;
  const liftCoefficient = norm(across) / perCoefficient;
  const spinParameter = spinParameterForLift(liftCoefficient);
  const halfTimeSquared = 0.5 * timeS * timeS;
  return {
    dragCoefficient: -along / perCoefficient,
    liftCoefficient,
    magnusMps2: across,
    magnusMovement: { verticalM: across[2] * halfTimeSquared, horizontalM: across[0] * halfTimeSquared },
    transverseSpinRadps: spinParameter === null ? null : (spinParameter * speed) / ball.radiusM,
    meanVelocityMps,
    timeS,
  };
}
