import { inchesToM, mphToMps } from '../../core/units/convert.ts';
import type { PlaneMark } from '../charts/plane-data.ts';

/** Numbers from 0 to 1 that look like chance and are the same every time: a 32-bit shift register (Marsaglia 2003, "Xorshift RNGs"). */
export function likeChance(seed: number): () => number {
  let at = (seed + 1) * 2_654_435_761 >>> 0;
  return () => {
    at ^= at << 13;
    at ^= at >>> 17;
    at ^= at << 5;
    return (at >>> 0) / 2 ** 32;
  };
}

/** About as a hand scatters: the sum of four, from −2 to 2. */
const scatter = (chance: () => number): number => chance() + chance() + chance() + chance() - 2;

export const ZONE = { kind: 'ellipse', verticalM: inchesToM(-10), armSideM: inchesToM(7), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) } as const;
/** The fastball's speed, and the band below it. */
export const FASTBALL_MPS = mphToMps(91);
export const BAND = { lowMps: mphToMps(80.5), highMps: mphToMps(84) } as const;

/** Changeups that come nearer to the target from trial to trial. */
export function inventedMarks(count: number, inferred = false): PlaneMark[] {
  const chance = likeChance(count);
  return Array.from({ length: count }, (_, index): PlaneMark => {
    const learned = count < 2 ? 1 : index / (count - 1);
    const downIn = 5 + 5 * learned + 1.6 * scatter(chance);
    const sideIn = 4 + 3 * learned + 1.6 * scatter(chance);
    const onTarget = Math.hypot(downIn - 10, sideIn - 7) <= 3;
    return { place: index + 1, trial: learned < 0.5 ? 'A' : 'B', fastball: false, inferred, onTarget, verticalM: inchesToM(-downIn), armSideM: inchesToM(sideIn), said: '' };
  });
}

/** Speeds in metres a second, each fourth a fastball. */
export function inventedSpeeds(count: number): { readonly place: number; readonly speedMps: number; readonly fastball: boolean; readonly onPace: boolean | null }[] {
  const chance = likeChance(count + 7);
  return Array.from({ length: count }, (_, index) => {
    const fastball = index % 4 === 0 && count > 3;
    const speedMps = (fastball ? FASTBALL_MPS : mphToMps(82.5)) + 0.6 * scatter(chance);
    return { place: index + 1, speedMps, fastball, onPace: fastball ? null : speedMps >= BAND.lowMps && speedMps <= BAND.highMps };
  });
}
