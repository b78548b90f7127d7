import { describe, expect, test } from 'vitest';
import { placeIn, placesIn, shownIn } from '../../../web/bench/places.ts';

describe('the places of Bench', () => {
  test('a phone shows one at a time', () => {
    expect(placesIn(1, false)).toEqual(['throws', 'target', 'trial', 'session']);
    expect(shownIn(1, 'trial')).toEqual(['trial']);
  });

  test('a tablet always shows the throws, a wide screen the target too', () => {
    expect(shownIn(2, placeIn(placesIn(2, false), 'throws'))).toEqual(['throws', 'target']);
    expect(shownIn(3, placeIn(placesIn(3, false), 'target'))).toEqual(['throws', 'target', 'trial']);
    expect(shownIn(3, placeIn(placesIn(3, false), 'session'))).toEqual(['throws', 'target', 'session']);
  });

  test('in a closed session no trial can begin', () => {
    expect(placesIn(1, true)).not.toContain('trial');
    expect(shownIn(3, placeIn(placesIn(3, true), 'trial'))).toEqual(['throws', 'target', 'session']);
  });
});
