/** Chance as it comes in: from 0 up to but not including 1. */
export interface Chance {
  uniform(): number;
}

const FIRST_MS = 400;
const LONGEST_MS = 10_000;

/** How long to wait before the next attempt after so many failures: doubling, at most 10 s, spread by ±20 % so that a room full of devices does not knock at once. */
export function backoffMs(failures: number, random: Chance): number {
  const plainMs = Math.min(LONGEST_MS, FIRST_MS * 2 ** (failures - 1));
  return plainMs * (0.8 + 0.4 * random.uniform());
}
