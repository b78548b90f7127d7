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

/** An independent, adaptive solution (Hairer's ODEX, npm odex) of the same equations, to about 1e-13. */
export function solveExactly(derivative: Derivative, start: readonly number[], untilS: number): number[] {
  const solver = new Solver(start.length);
  solver.absoluteTolerance = 1e-13;
  solver.relativeTolerance = 1e-13;
  solver.maxSteps = 100000;
  const rate = new Float64Array(start.length);
  const f = (timeS: number, state: number[]): number[] => {
    derivative(timeS, Float64Array.from(state), rate);
    return Array.from(rate);
  };
  const { y, outcome } = solver.solve(f, 0, [...start], untilS);
  if (outcome !== 0) throw new Error(`The reference solver stopped with outcome ${outcome}.`);
  return y;
}
