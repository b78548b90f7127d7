import { describe, expect, it } from 'vitest';
import { gathered, withMore, type Gathered } from '../../../core/session/gathered.ts';

describe('What gathers over years', () => {
  it('is the list that it would be, however it came', () => {
    const all = Array.from({ length: 203 }, (_, index) => index);
    expect(gathered(all).flat()).toEqual(all);
    for (const step of [1, 2, 5, 40]) {
      let grown: Gathered<number> = [];
      for (let from = 0; from < all.length; from += step) grown = withMore(grown, all.slice(from, from + step));
      expect(grown.flat()).toEqual(all);
    }
  });

  it('leaves what was known before as it was, and shares all but its last run with it', () => {
    const before = gathered(Array.from({ length: 100 }, (_, index) => index));
    const known = structuredClone(before);
    const after = withMore(before, [100, 101, 102]);
    expect(before).toEqual(known);
    expect(after.slice(0, before.length - 1).every((run, index) => run === before[index])).toBe(true);
    expect(withMore(before, [])).toBe(before);
  });
});
