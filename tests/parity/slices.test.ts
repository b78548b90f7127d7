import { describe, expect, it } from 'vitest';
import { growthsThatDiffer, placesThatDiffer } from './every-place.ts';
import { busyDay } from './sessions.ts';

/** A small sample of what slices.prove.ts does with many seeds. */
const SEEDS = [1, 2, 3, 4];

describe('a busy day', () => {
  it.each(SEEDS)('with seed %i plays back from its slices as it was shown live', (seed) => {
    expect(placesThatDiffer(busyDay(seed, 'north-1', 'summary', 80))).toEqual([]);
  });

  it.each(SEEDS)('with seed %i is followed while it grows as it is played back later', (seed) => {
    expect(growthsThatDiffer(busyDay(seed, 'north-1', 'summary', 80))).toEqual([]);
  });
});
