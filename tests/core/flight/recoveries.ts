import { standardAirDensityKgM3 } from '../../../core/flight/air.ts';
import { ATHLETES } from '../../../simulators/athletes.ts';
import { throwMany } from '../../simulators/throwing.ts';
import { seeded } from './noise.ts';
import { alongOf, anyPitch, breakAndPlaces, coefficients, recoveredIn, seenAndFitted, type Recovered } from './recovery.ts';

const airDensityKgM3 = 1.2;

/** Pitches of core's release and spin, fitted with the law they flew by. */
export function fromReleaseAndSpin(count: number, seed: number): Recovered[] {
  const chance = seeded(seed);
  return recoveredIn(Array.from({ length: count }, () => {
    const thrown = anyPitch(chance, airDensityKgM3);
    const fit = seenAndFitted(thrown, chance, { airDensityKgM3, alongSpinRadps: alongOf(thrown) });
    return { ...breakAndPlaces(fit, thrown), ...coefficients(fit, thrown) };
  }));
}

/** Changeups and fastballs of the simulated athletes, pushed by seams too, for a device that measures the spin and for one that infers it. */
export function fromTheSimulator(count: number, seed: number, spin: 'measured' | 'inferred'): Recovered[] {
  const chance = seeded(seed);
  const each = Math.ceil(count / (2 * ATHLETES.length));
  const thrown = ATHLETES.flatMap((athlete) => [
    ...throwMany(athlete, 'four-seam', null, each, seed),
    ...throwMany(athlete, 'changeup', athlete.tried[1].grip, each, seed),
  ]);
  return recoveredIn(thrown.map((ball) => breakAndPlaces(seenAndFitted(ball, chance, {
    airDensityKgM3: standardAirDensityKgM3,
    ...(spin === 'measured' ? { measuredSpinRadps: ball.launch.spinRadps } : { alongSpinRadps: alongOf(ball) }),
  }), ball)));
}
