import { expect, it } from 'vitest';
import { growthsThatDiffer, placesThatDiffer } from './every-place.ts';
import { remembranceThatDiffers } from './from-scratch.ts';
import { busyDay } from './sessions.ts';

const SEEDS = Array.from({ length: 200 }, (_, index) => 1000 + index);

it('two hundred busy days play back, and are followed, as they were shown live', () => {
  const differing = SEEDS.flatMap((seed) => {
    const day = busyDay(seed, 'north-1', 'summary', 160);
    return [...placesThatDiffer(day), ...growthsThatDiffer(day)].map((where) => `seed ${seed}: ${where}`);
  });
  expect(differing).toEqual([]);
});

it('forty of them, of paths too, show at every place what they would show to whom nothing is remembered', () => {
  const differing = SEEDS.slice(0, 40).flatMap((seed, index) =>
    remembranceThatDiffers(busyDay(seed, 'north-1', index % 4 === 0 ? 'path' : 'summary', index % 4 === 0 ? 60 : 220)).map((where) => `seed ${seed}: ${where}`));
  expect(differing).toEqual([]);
});
