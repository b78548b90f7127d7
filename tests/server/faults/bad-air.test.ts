import { expect, test } from 'vitest';
import { throughBadAir } from './bad-air.ts';

test('connections that are cut, delayed, repeated and reordered lose no throw and no note and store none twice', async () => {
  const { happened } = await throughBadAir(1, 60);
  for (const times of Object.values(happened)) expect(times).toBeGreaterThan(0);
}, 120_000);
