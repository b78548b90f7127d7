import * as fc from 'fast-check';

/** Cases of one kind at a time, so that a million need no memory. */
const BATCH = 1_000;

/**
 * Seeded cases, batch by batch.
 * @param act gets a batch and answers how many of it were really done
 * @returns how many were done in all
 */
export async function inBatches<Case>(cases: fc.Arbitrary<Case>, { count, seed }: Chance, act: (batch: readonly Case[]) => Promise<number>): Promise<number> {
  let done = 0;
  for (let begun = 0; begun < count; begun += BATCH) done += await act(fc.sample(cases, { seed: seed + begun, numRuns: Math.min(BATCH, count - begun) }));
  return done;
}

export interface Chance {
  readonly count: number;
  readonly seed: number;
}
