import { expect, test } from 'vitest';
import { busyDay } from '../../parity/sessions.ts';
import { placesWherePuttingAwayTells } from './put-away.ts';

/** A small sample of what put-away.prove.ts does with many seeds. */
test.each([2])('a busy day with seed %i shows the same at every place, to the last bit, when every closed session is put away', (seed) => {
  const { places, putAway } = placesWherePuttingAwayTells(busyDay(seed, 'north-1', 'summary', 70));
  expect(places).toEqual([]);
  expect(putAway).toBeGreaterThan(0);
});
