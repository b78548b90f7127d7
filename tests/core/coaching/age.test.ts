import { expect, it } from 'vitest';
import { mayBeYouth, youngerAge } from '../../../core/coaching/age.ts';

it('where a birth year leaves two ages possible, the younger counts', () => {
  expect(youngerAge(2008, 2026)).toBe(17);
});

it('an athlete is a youth until the younger of the two ages is 18', () => {
  expect(mayBeYouth(2008, 2026)).toBe(true);
  expect(mayBeYouth(2007, 2026)).toBe(false);
});
