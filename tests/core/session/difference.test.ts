import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { differencesBetween, withDifferences } from '../../../core/session/difference.ts';

const overTheWire = <Data>(data: Data): Data => JSON.parse(JSON.stringify(data)) as Data;
const sent = (before: object, after: object): object => withDifferences(overTheWire(before), overTheWire(differencesBetween(before, after)));

test('whatever two views hold, what differs between them makes the one the other', () => {
  const NAMES = fc.constantFrom('mean', 'low', 'kind', 'days', 'miss');
  const { data } = fc.letrec((tie) => ({
    data: fc.oneof({ maxDepth: 4 }, fc.constantFrom(null, true, 'estimate', 'too-few', 0, 0.25, 3), fc.array(tie('data'), { maxLength: 3 }), fc.dictionary(NAMES, tie('data'))),
  }));
  const both = fc.tuple(data, data).map(([before, after]) => [{ session: before }, { session: after }] as const);
  fc.assert(fc.property(both, ([before, after]) => {
    expect(sent(before, after)).toEqual(after);
    expect(sent(before, before)).toEqual(before);
  }), { seed: 20261130 });
});

test('a window that moved sends its new numbers and nothing else', () => {
  const window = { kind: 'estimate', mean: -4.1, low: -4.4, high: -3.8, count: 3 };
  const before = { place: 7, session: { windows: [window, { ...window, count: 5 }], stage: 'mound' } };
  const after = { place: 8, session: { windows: [{ ...window, mean: -4.2 }, { ...window, count: 5 }], stage: 'mound' } };
  expect(differencesBetween(before, after)).toEqual({ place: 8, session: { windows: { 0: { mean: -4.2 } } } });
});

test('what becomes of another kind, longer, shorter or nothing comes whole', () => {
  const before = { estimate: { kind: 'too-few', count: 2, need: 3 }, trials: ['A'], session: { id: 's1' }, zone: null };
  const after = { estimate: { kind: 'estimate', mean: 1 }, trials: ['A', 'B'], session: null, zone: { verticalM: 0.3 } };
  expect(differencesBetween(before, after)).toEqual({ estimate: [after.estimate], trials: [after.trials], session: null, zone: [after.zone] });
  expect(sent(before, after)).toEqual(after);
});

test('a name that nobody said before is added, and one that is no longer said is gone', () => {
  const [unsaid, said] = [{ trial: { letter: 'A', family: undefined } }, { trial: { letter: 'A', family: 'turnover' } }];
  expect(differencesBetween(unsaid, said)).toEqual({ trial: { family: 'turnover' } });
  expect(sent(unsaid, said)).toEqual(said);
  expect(sent(said, unsaid)).toEqual({ trial: { letter: 'A' } });
});

test('what does not differ stays the same object, and nothing that was shown changes', () => {
  const before = { session: { baseline: { number: 1 }, counts: { all: 5 } } };
  const after = withDifferences(before, { session: { counts: { all: 6 } } });
  expect(after).toEqual({ session: { baseline: { number: 1 }, counts: { all: 6 } } });
  expect(after.session.baseline).toBe(before.session.baseline);
  expect(before.session.counts).toEqual({ all: 5 });
});
