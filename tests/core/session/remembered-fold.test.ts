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
