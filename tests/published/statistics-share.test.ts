import { expect, it } from 'vitest';
import { shareEvidence } from '../../core/statistics/share-lower-bound.ts';
import { wilsonInterval } from '../../core/statistics/wilson.ts';

// Published: Newcombe, Statistics in Medicine 17:857 (1998), to four places.
it.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])('%i of %i on target have the Wilson interval of Newcombe', (hits, throws, low, high) => {
  const found = wilsonInterval(hits, throws);
  expect(found?.share).toBe(hits / throws);
  expect(found?.low.toFixed(4)).toBe(low.toFixed(4));
  expect(found?.high.toFixed(4)).toBe(high.toFixed(4));
});

// Computed independently (SciPy) from the beta mixture of Robbins (1970): evidence that more than half are on target.
it.each([
  [10, 10, '93.1'],
  [8, 10, '2.07'],
])('%i of %i on target is evidence of %s against one half', (hits, count, expected) => {
  expect(shareEvidence(hits, count, 0.5).toPrecision(3)).toBe(expected);
});
