import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import type { ThrowEntry } from '../../../core/session/ledger.ts';
import { rememberedFold } from '../../../core/session/remembered-fold.ts';
import { collect } from '../../collected.ts';

interface Sum {
  readonly throws: number;
}

const entry = (place: number): ThrowEntry => ({ place }) as ThrowEntry;

test('a fold over runs that have grown steps through the new throws alone', () => {
  const stepped: number[] = [];
  const folded = rememberedFold<Sum>((sum, { place }) => (stepped.push(place), { throws: sum.throws + 1 }));
  const [start, run] = [{ throws: 0 }, [entry(1), entry(2)]];
  expect(folded([run], start)).toEqual({ throws: 2 });
  expect(folded([[...run, entry(3)]], start)).toEqual({ throws: 3 });
  expect(stepped).toEqual([1, 2, 3]);
});

test('whatever was folded before, a fold is the same as from scratch', () => {
  const folded = rememberedFold<{ readonly places: string }>(({ places }, { place }) => ({ places: `${places} ${place}` }));
  const entries = Array.from({ length: 9 }, (_, index) => entry(index + 1));
  const inThrees = [entries.slice(0, 3), entries.slice(3, 6), entries.slice(6)];
  const other = [inThrees[0]!, [entries[3]!, entry(50)], inThrees[2]!];
  const [start, otherStart] = [{ places: '' }, { places: 'other' }];
  for (const [thrown, from] of [[inThrees, start], [other, start], [inThrees.slice(0, 1), start], [inThrees, otherStart], [inThrees, start], [[], start], [inThrees.slice(1), start], [other, otherStart]] as const) {
    expect(folded(thrown, from).places).toBe([from.places, ...thrown.flat().map(({ place }) => place)].join(' '));
  }
});

test('a throw that cannot be folded spoils nothing that is folded afterwards', () => {
  const folded = rememberedFold<{ readonly places: string }>(({ places }, { place }) => {
    if (place === 99) throw new Error('not this one');
    return { places: `${places} ${place}` };
  });
  const [start, first, second, third] = [{ places: '' }, [entry(1)], [entry(2)], [entry(3)]];
  folded([first, second, third], start);
  expect(() => folded([first, [entry(7)], [entry(99)]], start)).toThrow('not this one');
  expect(folded([first, second, third], start).places).toBe(' 1 2 3');
});

test('what is remembered holds no throw longer than somebody else does, however long the start of the fold is kept', async () => {
  const folded = rememberedFold<Sum>((sum) => ({ throws: sum.throws + 1 }));
  const start = { throws: 0 };
  const held = ((): WeakRef<ThrowEntry> => {
    const run = [entry(1), entry(2)];
    expect(folded([run, [entry(3)]], start).throws).toBe(3);
    return new WeakRef(run[0]!);
  })();
  await setImmediate();
  collect();
  expect(held.deref()).toBeUndefined();
  expect(start).toEqual({ throws: 0 });
});
