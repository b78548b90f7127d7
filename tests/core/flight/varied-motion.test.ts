import { describe, expect, test } from 'vitest';
import { defaultLaw } from '../../../core/flight/aerodynamics.ts';
import { crossLiftCoefficient, sawickiLiftCoefficient } from '../../../core/flight/lift-laws.ts';
import { equationsOfMotion } from '../../../core/flight/motion.ts';
import { rungeKutta4 } from '../../../core/flight/runge-kutta.ts';
import { startVaried, variedMotion, variedSize, type Push } from '../../../core/flight/varied-motion.ts';
import type { Vector } from '../../../core/flight/vector.ts';

const windMps = [1, 2, 0.5] as const;
const looksForSpin: Push = { kind: 'spin', first: [1, 0, 0], second: [0, 0.1, -0.995], along: [3, -50, 2] };
const looksForSeam: Push = { kind: 'seam', spin: [-150, -30, 60] };
const start: readonly number[] = [1, -38, 0.4];
const laws = [['default', defaultLaw.liftCoefficient], ['Sawicki', sawickiLiftCoefficient], ['Cross', crossLiftCoefficient]] as const;

function flown(push: Push, liftCoefficient: (s: number) => number, velocityMps: readonly number[], forces: readonly number[]): Float64Array {
  const { motion, unknowns } = variedMotion({ airDensityKgM3: 1.2, windMps, law: { ...defaultLaw, liftCoefficient }, push });
  unknowns.set(forces);
  const state = new Float64Array(variedSize);
  startVaried([0, 17, 2, ...velocityMps], state);
  const step = rungeKutta4(variedSize, motion);
  for (let i = 0; i < 15; i += 1) step(0, 0.03, state, state);
  return state;
}

describe.each([
  ['a spin', looksForSpin, [0.37, -170, 60]],
  ['hardly any spin', { ...looksForSpin, along: [0, 0, 0] } satisfies Push, [0.37, 0, 0.01]],
  ['a push beside the spin', looksForSeam, [0.37, 0.03, -0.02]],
] as const)('The varied motion of a ball with %s', (_, push, forces) => {
  test.each(laws)('is the motion of the ball, and its columns are the differences that nudged flights make (%s law)', (name, lift) => {
    const base = flown(push, lift, start, forces);
    const all = [...start, ...forces];
    for (let column = 0; column < all.length; column += 1) {
      const by = 1e-4 * Math.max(1, Math.abs(all[column]!));
      const nudged = (sign: 1 | -1): Float64Array => {
        const moved = all.with(column, all[column]! + sign * by);
        return flown(push, lift, moved.slice(0, 3), moved.slice(3));
      };
      const [above, below] = [nudged(1), nudged(-1)];
      const difference = [0, 1, 2, 3, 4, 5].map((i) => (above[i]! - below[i]!) / (2 * by));
      const size = Math.hypot(...difference);
      difference.forEach((value, i) => expect(Math.abs(value - base[6 + 6 * column + i]!), `${name}, column ${column}, row ${i}`).toBeLessThan(1e-7 * size));
    }
  });
});

test.each([looksForSpin, looksForSeam])('flies as the equations of motion do, with $kind looked for', (push) => {
  const spins = push.kind === 'spin';
  const forces = spins ? [0.37, -170, 60] : [0.37, 0.03, -0.02];
  const spinRadps: Vector = spins ? [forces[1]! + 3, 0.1 * forces[2]! - 50, -0.995 * forces[2]! + 2] : push.spin;
  const law = { ...defaultLaw, dragCoefficient: () => 0.37 };
  const step = rungeKutta4(6, equationsOfMotion(spinRadps, { airDensityKgM3: 1.2, windMps, law, ...(spins ? {} : { seamCoefficient: { x: 0.03, z: -0.02 } }) }));
  const plain = Float64Array.of(0, 17, 2, ...start);
  for (let i = 0; i < 15; i += 1) step(0, 0.03, plain, plain);
  const varied = flown(push, defaultLaw.liftCoefficient, start, forces);
  plain.forEach((value, i) => expect(Math.abs(value - varied[i]!)).toBeLessThan(1e-13));
});
