import { expect, test } from 'vitest';
import { defaultLaw } from '../../../core/flight/aerodynamics.ts';
import { firstGuess } from '../../../core/flight/first-guess.ts';
import { fitMotion, type MotionFit } from '../../../core/flight/fit-motion.ts';
import { pushAcross, unknownsOf } from '../../../core/flight/fitted-forces.ts';
import { flyPitch } from '../../../core/flight/fly.ts';
import { residualsFor } from '../../../core/flight/misreads.ts';
import { columnsOf } from '../../../core/flight/path-samples.ts';
import { variedMotion, type VariedForces } from '../../../core/flight/varied-motion.ts';
import { changeup, fastball, launchOf, tailingFastball } from './pitches.ts';
import { samplesOf } from './seen.ts';

test('the fit stops where it would stay: begun again from its end it moves by less than a hundred-thousandth of a standard error', () => {
  let farthest = 0;
  for (let seed = 1; seed <= 60; seed += 1) {
    const flight = flyPitch(launchOf([fastball, tailingFastball, changeup][seed % 3]!), { airDensityKgM3: 1.2 });
    const columns = columnsOf(samplesOf(flight, { noiseM: 0.001 * (seed % 7), count: 60 + seed, seed }));
    const residuals = residualsFor(columns.count);
    const guess = firstGuess(columns, residuals)!;
    const forces: VariedForces = { airDensityKgM3: 1.2, windMps: [0, 0, 0], law: defaultLaw, push: pushAcross(guess.velocityMps, 0, undefined) };
    const once = fitMotion(columns, variedMotion(forces), unknownsOf(guess, forces), residuals) as MotionFit;
    const twice = fitMotion(columns, variedMotion(forces), once.unknowns.slice(), residuals) as MotionFit;
    once.unknowns.forEach((value, i) => { farthest = Math.max(farthest, Math.abs(value - twice.unknowns[i]!) / Math.sqrt(once.covariance[10 * i]!)); });
  }
  console.log(`begun again from its end a fit moves by at most ${farthest.toExponential(1)} standard errors`);
  expect(farthest).toBeLessThan(1e-5);
});
