import { expect, test } from 'vitest';
import { said } from '../../proved.ts';
import { busyDay } from '../../parity/sessions.ts';
import { placesWherePuttingAwayTells } from './put-away.ts';

const SEEDS = 120;

test(`${SEEDS} busy days show the same at every place, to the last bit, when every closed session is put away`, () => {
  let packs = 0;
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const { places, putAway } = placesWherePuttingAwayTells(busyDay(seed, 'north-1', seed % 10 === 0 ? 'path' : 'summary', 120));
    expect({ seed, places }).toEqual({ seed, places: [] });
    packs += putAway;
  }
  said(`${SEEDS} days, ${packs} times put away`);
  expect(packs).toBeGreaterThan(SEEDS);
});
