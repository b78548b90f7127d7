import { describe, expect, it } from 'vitest';
import { disagreements } from './agreement.ts';

const VIEW = { place: 7, session: { windows: [{ speedMps: { kind: 'estimate', mean: 38.123, low: 37.9, high: 38.3, count: 5 } }] }, throws: [{ verticalM: -0.2032, intent: 'changeup', miss: { onTarget: true } }] };
const changed = (change: (view: typeof VIEW) => void): typeof VIEW => {
  const copy = structuredClone(VIEW);
  change(copy);
  return copy;
};

describe('two views agree', () => {
  it('when they are the same', () => {
    expect(disagreements(VIEW, structuredClone(VIEW))).toEqual([]);
  });

  it('when a number differs by one quantum of its field, and no longer by two', () => {
    expect(disagreements(VIEW, changed((view) => (view.throws[0]!.verticalM = -0.2033)))).toEqual([]);
    expect(disagreements(VIEW, changed((view) => (view.throws[0]!.verticalM = -0.2034)))).toEqual(['.throws.0.verticalM: live -0.2032, played -0.2034']);
  });

  it('when an estimate is off by one quantum of the measure it belongs to', () => {
    expect(disagreements(VIEW, changed((view) => (view.session.windows[0]!.speedMps.mean = 38.124)))).toEqual([]);
    expect(disagreements(VIEW, changed((view) => (view.session.windows[0]!.speedMps.mean = 38.125)))).toHaveLength(1);
  });
});

describe('two views disagree', () => {
  it('about a word, a verdict or a count, however small', () => {
    expect(disagreements(VIEW, changed((view) => (view.throws[0]!.intent = 'split')))).toHaveLength(1);
    expect(disagreements(VIEW, changed((view) => (view.throws[0]!.miss.onTarget = false)))).toHaveLength(1);
    expect(disagreements(VIEW, changed((view) => (view.place = 8)))).toHaveLength(1);
  });

  it('when one has what the other lacks', () => {
    expect(disagreements(VIEW, { ...VIEW, throws: [] })).toEqual(['.throws.0: only live']);
    expect(disagreements(VIEW, { ...VIEW, notes: [] })).toEqual(['.notes: only played']);
    expect(disagreements({ separation: null }, { separation: { verticalM: 1 } })).toHaveLength(1);
    expect(disagreements({ tiltRad: 0.5 }, { tiltRad: 'not-sent' })).toHaveLength(1);
  });
});
