import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Thrown, ThrowEntry } from '../../../core/session/ledger.ts';
import { countAfter, countOf, newestOf, throwAt, withoutThrow, withThrow } from '../../../core/session/thrown.ts';

const entryAt = (place: number, atMs: number): ThrowEntry => ({
  place, atMs, source: { device: 'd', run: 'r', sequence: place, time: atMs, sight: 'full-flight', axis: 'none', units: { distance: 'm', speed: 'm/s', movement: 'm' } },
  body: { summary: { releaseSpeed: 40 } }, air: null, corrected: false, session: 's', tags: {},
});
const steps = fc.array(fc.record({ take: fc.integer({ min: 0, max: 3 }).map((one) => one === 0), place: fc.integer({ min: 1, max: 300 }) }), { maxLength: 400 });

it('throws that come, change and go, in whatever order, stand in the order of the log as a plain list would have them', () => {
  fc.assert(fc.property(steps, fc.integer({ min: 0, max: 310 }), fc.integer({ min: 0, max: 310 }), (all, place, most) => {
    let thrown: Thrown = [];
    const plain = new Map<number, ThrowEntry>();
    all.forEach((step, index) => {
      const entry = entryAt(step.place, index);
      thrown = step.take ? withoutThrow(thrown, step.place) : withThrow(thrown, entry);
      if (step.take) plain.delete(step.place);
      else plain.set(step.place, entry);
    });
    const sorted = [...plain.values()].sort((a, b) => a.place - b.place);
    expect(thrown.flat()).toEqual(sorted);
    expect(countOf(thrown)).toBe(sorted.length);
    expect(throwAt(thrown, place)).toBe(plain.get(place));
    expect(countAfter(thrown, place)).toBe(sorted.filter((one) => one.place > place).length);
    expect(newestOf(thrown, most, (run, first) => run.map((entry, index) => [first + index, entry]))).toEqual(sorted.map((entry, index) => [index + 1, entry]).slice(Math.max(0, sorted.length - most)));
    expect(thrown.every((run) => run.length > 0 && run.length <= 64)).toBe(true);
  }), { seed: 1860, numRuns: 60 });
});

it('one throw more leaves every full run as it was', () => {
  const places = Array.from({ length: 200 }, (_, index) => index + 1);
  const before = places.reduce<Thrown>((thrown, place) => withThrow(thrown, entryAt(place, 0)), []);
  const after = withThrow(before, entryAt(201, 0));
  expect(after.slice(0, -1).filter((run) => before.includes(run))).toHaveLength(after.length - 1);
});
