import type { ConstantAcceleration } from './constant-acceleration.ts';
import { measureDistances, type Residuals } from './misreads.ts';
import { parabolaThrough } from './parabola.ts';
import type { Columns } from './path-samples.ts';

const softRounds = 4;
const asFarAsSoft = 9; // squared: a sample three deviations off counts half

/**
 * Constant acceleration through the samples with soft (Cauchy) weights, so that gross misreads cannot drag it: where the fit
 * of the equations of motion starts. The path's t = 0 is the mean time of the samples. Overwrites `residuals`. Null where the times do not carry a parabola.
 */
export function firstGuess(columns: Columns, residuals: Residuals): ConstantAcceleration | null {
  const weights = new Float64Array(columns.count).fill(1);
  for (let round = 1; ; round += 1) {
    const fit = parabolaThrough(columns, weights);
    if (fit === null || round === softRounds) return fit;
    writeResiduals(columns, fit, residuals.axes);
    measureDistances(residuals);
    for (let i = 0; i < columns.count; i += 1) weights[i] = 1 / (1 + residuals.squares[i]! / asFarAsSoft);
  }
}

function writeResiduals({ times, places, count }: Columns, fit: ConstantAcceleration, into: readonly Float64Array[]): void {
  for (let axis = 0; axis < 3; axis += 1) {
    const [p, v, half] = [fit.positionM[axis]!, fit.velocityMps[axis]!, fit.accelerationMps2[axis]! / 2];
    const place = places[axis]!;
    const residual = into[axis]!;
    for (let i = 0; i < count; i += 1) residual[i] = place[i]! - (p + times[i]! * (v + times[i]! * half));
  }
}
