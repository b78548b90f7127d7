import { expect, it } from 'vitest';
import { grubbs } from '../../../core/statistics/grubbs.ts';
import { seededNormal } from './seeded-normals.ts';

// 4,000 seeded samples: four standard errors of a share of 0.05 are 0.0138.
it.each([5, 10, 30])('one clean sample of %i throws in twenty is flagged', (count) => {
  const normal = seededNormal(600 + count);
  let flagged = 0;
  for (let run = 0; run < 4000; run += 1) {
    if (grubbs(Array.from({ length: count }, normal))!.flagged) flagged += 1;
  }
  expect(Math.abs(flagged / 4000 - 0.05)).toBeLessThan(0.0138);
});
