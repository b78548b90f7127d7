import { aerodynamicConstantPerM, liftCoefficient, spinParameterForLift, splitAlong } from './aerodynamics.ts';
import { ball, standardGravityMps2 } from './ball.ts';
import { equationsOfMotion } from './motion.ts';
import { add, cross, norm, scale, type Vector } from './vector.ts';

const probeS = 0.005;

/**
 * How fast the acceleration of a ball changes, m/s³, given its velocity and acceleration (gravity included) at one moment:
 * drag and lift fall as the ball slows. C_D is kept, the transverse spin that explains the push across the flight is kept
 * fixed in space, and the equations of motion are differentiated along the flight. Where no spin by the lift law explains
 * the push, its coefficient is kept instead.
 */
export function expectedJerk(velocityMps: Vector, accelerationMps2: Vector, airDensityKgM3: number): Vector {
  const speed = norm(velocityMps);
  const perCoefficient = aerodynamicConstantPerM(airDensityKgM3) * speed * speed;
  const { along, across } = splitAlong(add(accelerationMps2, [0, 0, standardGravityMps2]), velocityMps);
  const lift = norm(across) / perCoefficient;
  const spinParameter = spinParameterForLift(lift);
  const transverseRadps = ((spinParameter ?? 1) * speed) / ball.radiusM;
  const motion = equationsOfMotion(scale(axisFor(across, velocityMps), transverseRadps), {
    airDensityKgM3,
    law: {
      dragCoefficient: () => -along / perCoefficient,
      liftCoefficient: spinParameter === null ? () => lift : liftCoefficient,
    },
  });
  const accelerationAt = (timeS: number): Vector => {
    const rate = new Float64Array(6);
    motion(0, Float64Array.of(0, 0, 0, ...add(velocityMps, scale(accelerationMps2, timeS))), rate);
    return [rate[3]!, rate[4]!, rate[5]!];
  };
  return scale(add(accelerationAt(probeS), scale(accelerationAt(-probeS), -1)), 1 / (2 * probeS));
}

/** The unit axis across the flight whose Magnus force points along `push`; zero for no push. */
function axisFor(push: Vector, velocityMps: Vector): Vector {
  const axis = cross(velocityMps, push);
  const length = norm(axis);
  return length === 0 ? [0, 0, 0] : scale(axis, 1 / length);
}
