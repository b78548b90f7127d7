import { createRequire } from 'node:module';
import type { Derivative } from '../../../core/flight/runge-kutta.ts';

interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  denseOutput: boolean;
  maxSteps: number;
  solve(f: (x: number, y: number[]) => number[], x0: number, y0: number[], xEnd: number): { y: number[]; outcome: number };
}

// Required, not imported: the package's entry has TypeScript source beside it that does not pass our compiler settings.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => OdexSolver };

/** An independent, adaptive solution (Hairer's ODEX, npm odex) of the same equations, to about 1e-13 where no tolerance is given. */
export function solveExactly(derivative: Derivative, start: readonly number[], untilS: number, tolerance = 1e-13, fromS = 0): number[] {
  const solver = new Solver(start.length);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxSteps = 100000;
  const now = new Float64Array(start.length);
  const rate = new Float64Array(start.length);
  const f = (timeS: number, state: number[]): number[] => {
    now.set(state);
    derivative(timeS, now, rate);
    return Array.from(rate);
  };
  const { y, outcome } = solver.solve(f, fromS, [...start], untilS);
  if (outcome !== 0) throw new Error(`The reference solver stopped with outcome ${outcome}.`);
  return y;
}

/** Time and state where the exact flight (x, y, z, vx, vy, vz) passes the plane: Newton's method on the time, each piece solved exactly. */
export function solveToPlane(derivative: Derivative, start: readonly number[], planeYM: number): { timeS: number; state: number[] } {
  let timeS = 0;
  let state = [...start];
  for (let round = 0; round < 12; round += 1) {
    const stepS = (planeYM - state[1]!) / state[4]!;
    if (Math.abs(stepS) < 1e-14) break;
    state = solveExactly(derivative, state, timeS + stepS, 1e-13, timeS);
    timeS += stepS;
  }
  return { timeS, state };
}
