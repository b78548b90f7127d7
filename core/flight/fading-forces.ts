import { aerodynamicConstantPerM, liftCoefficient, spinParameterForLift, splitAlong } from './aerodynamics.ts';
import { ball, standardGravityMps2 } from './ball.ts';
import { equationsOfMotion } from './motion.ts';
import { add, cross, norm, scale, type Vector } from './vector.ts';

/** What the fit knows of the air before it looks at the samples. */
export interface Air {
  readonly airDensityKgM3: number;
  /** Spin along the flight, positive with it; it makes lift later, as the flight turns away from it. */
  readonly alongSpinRadps: number;
}

/** How the acceleration of a ball changes as it slows and turns: first and second derivative in time. */
export interface Fading {
  readonly jerkMps3: Vector;
  readonly snapMps4: Vector;
  /** The acceleration they were worked out at, and ∂jerk/∂acceleration there, axis by axis, 1/s. */
  readonly atMps2: Vector;
  readonly bendPerS: Vector;
}

export const nothingFades: Fading = { jerkMps3: [0, 0, 0], snapMps4: [0, 0, 0], atMps2: [0, 0, 0], bendPerS: [0, 0, 0] };

const probeS = 0.05;
const probeMps2 = 0.01;

/**
 * The fading of the forces on a ball, given its velocity and acceleration (gravity included) at one moment. C_D is kept,
 * the transverse spin that explains the push across the flight is kept fixed in space, and the equations of motion are
 * differentiated along the flight. Where no spin by the lift law explains the push, its coefficient is kept instead.
 * `before` is the fading of the last round: the flight the derivatives are taken along bends with it.
 */
export function fadingOf(velocityMps: Vector, accelerationMps2: Vector, air: Air, before: Fading): Fading {
  const { jerk, snap } = derivatives(velocityMps, accelerationMps2, air, before);
  const bend = (axis: 0 | 1 | 2): number => {
    const nudged = accelerationMps2.map((a, i) => (i === axis ? a + probeMps2 : a)) as unknown as Vector;
    return (derivatives(velocityMps, nudged, air, before).jerk[axis] - jerk[axis]) / probeMps2;
  };
  return { jerkMps3: jerk, snapMps4: snap, atMps2: accelerationMps2, bendPerS: [bend(0), bend(1), bend(2)] };
}

function derivatives(velocityMps: Vector, accelerationMps2: Vector, air: Air, before: Fading): { jerk: Vector; snap: Vector } {
  const motion = motionExplaining(velocityMps, accelerationMps2, air);
  const accelerationAt = (timeS: number): Vector => {
    const turned = add(scale(accelerationMps2, timeS), add(scale(before.jerkMps3, timeS ** 2 / 2), scale(before.snapMps4, timeS ** 3 / 6)));
    const rate = new Float64Array(6);
    motion(0, Float64Array.of(0, 0, 0, ...add(velocityMps, turned)), rate);
    return [rate[3]!, rate[4]!, rate[5]!];
  };
  const [earlier, now, later] = [accelerationAt(-probeS), accelerationAt(0), accelerationAt(probeS)];
  return {
    jerk: scale(add(later, scale(earlier, -1)), 1 / (2 * probeS)),
    snap: scale(add(add(later, earlier), scale(now, -2)), 1 / probeS ** 2),
  };
}

/** The equations of motion whose drag and spin give just this acceleration at this velocity. */
function motionExplaining(velocityMps: Vector, accelerationMps2: Vector, { airDensityKgM3, alongSpinRadps }: Air): ReturnType<typeof equationsOfMotion> {
  const speed = norm(velocityMps);
  const perCoefficient = aerodynamicConstantPerM(airDensityKgM3) * speed * speed;
  const { along, across } = splitAlong(add(accelerationMps2, [0, 0, standardGravityMps2]), velocityMps);
  const lift = norm(across) / perCoefficient;
  const spinParameter = spinParameterForLift(lift);
  const transverseRadps = ((spinParameter ?? 1) * speed) / ball.radiusM;
  const spin = add(scale(axisFor(across, velocityMps), transverseRadps), scale(velocityMps, alongSpinRadps / speed));
  return equationsOfMotion(spin, {
    airDensityKgM3,
    law: {
      dragCoefficient: () => -along / perCoefficient,
      liftCoefficient: spinParameter === null ? () => lift : liftCoefficient,
    },
  });
}

/** The unit axis across the flight whose Magnus force points along `push`; zero for no push. */
function axisFor(push: Vector, velocityMps: Vector): Vector {
  const axis = cross(velocityMps, push);
  const length = norm(axis);
  return length === 0 ? [0, 0, 0] : scale(axis, 1 / length);
}
