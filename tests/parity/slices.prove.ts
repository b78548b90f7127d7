import { expect, it } from 'vitest';
import { growthsThatDiffer, placesThatDiffer } from './every-place.ts';
import { busyDay } from './sessions.ts';

const SEEDS = Array.from({ length: 200 }, (_, index) => 1000 + index);

it('two hundred busy days play back, and are followed, as they were shown live', () => {
  const differing = SEEDS.flatMap((seed) => {
    const day = busyDay(seed, 'north-1', 'summary', 160);
    return [...placesThatDiffer(day), ...growthsThatDiffer(day)].map((where) => `seed ${seed}: ${where}`);
  });
  expect(differing).toEqual([]);
});
