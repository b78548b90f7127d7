import { expect, test } from 'vitest';
import { moundsOf } from '../../web/wall/mounds-of.ts';

test('a Wall hangs each mound once and at most four, and knows which are too many', () => {
  expect(moundsOf('north-1')).toEqual({ hung: ['north-1'], leftOut: [] });
  expect(moundsOf('north-1+ south-2+north-1+')).toEqual({ hung: ['north-1', 'south-2'], leftOut: [] });
  expect(moundsOf('a+b+c+d+e+f')).toEqual({ hung: ['a', 'b', 'c', 'd'], leftOut: ['e', 'f'] });
});
