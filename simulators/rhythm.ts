import { WARM_UP_THROWS } from './plan.ts';
import type { Random } from './random.ts';

const WARM_UP_MS = 1_200;

/** Milliseconds before the throw after `thrown` others: quick while the very first fastballs are thrown, then the interval, give or take 15 %. */
export function waitBefore(thrown: number, intervalMs: number, random: Random): number {
  const plainMs = thrown < WARM_UP_THROWS ? Math.min(WARM_UP_MS, intervalMs) : intervalMs;
  return plainMs * (0.85 + 0.3 * random.uniform());
}
