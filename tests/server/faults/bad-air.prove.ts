import { expect, test } from 'vitest';
import { said } from '../../proved.ts';
import { throughBadAir } from './bad-air.ts';

const SEEDS = 25;
const THROWS = 300;

test(`connections that are cut, delayed, repeated and reordered lose no throw and no note and store none twice, over ${SEEDS} evenings`, async () => {
  const total = { throws: 0, notes: 0, cut: 0, duplicate: 0, delay: 0, reorder: 0 };
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    // oxlint-disable-next-line no-await-in-loop -- one evening at a time
    const { throws, notes, happened } = await throughBadAir(seed, THROWS);
    for (const [key, more] of Object.entries({ throws, notes, ...happened })) total[key as keyof typeof total] += more;
  }
  expect(Math.min(...Object.values(total))).toBeGreaterThan(SEEDS);
  said(`${total.throws} throws and ${total.notes} statements, each stored once, through ${total.cut} cuts, ${total.duplicate} frames repeated, ${total.delay} delayed and ${total.reorder} reordered; every screen showed what the file holds`);
});
