import { describe, expect, it } from 'vitest';
import type { ComparedThrow } from '../../../core/coaching/compared-throw.ts';
import { compareTrials } from '../../../core/coaching/comparison.ts';
import { comparisonAlpha } from '../../../core/coaching/verdict.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { block, inOrder, mayThrow, missing, terms, zone } from './compared-throws.ts';

const old = [2, 3.2, 2.6, 3.4, 2.2];
const better = [0.4, 1.6, 1, 1.8, 0.6];
const same = [2.1, 3.3, 2.5, 3.3, 2.3];
const blocks = (b: readonly number[], different: Partial<ComparedThrow> = {}) => [block('a', old, different), block('b', b, different)];
const monday = { day: '2026-03-02' };
const tuesday = { day: '2026-03-03' };

describe('a comparison of two trials', () => {
  const compared = compareTrials(inOrder(...blocks(better), ...blocks(better)), terms());

  it('judges the miss and says better when the new grip misses by less', () => {
    expect(compared.verdict).toMatchObject({ kind: 'better' });
    if (compared.verdict.kind !== 'better') throw new Error(compared.verdict.kind);
    expect(compared.verdict.difference).toBeCloseTo(-1.6, 12);
    expect(compared.outlook).toEqual({ kind: 'settled' });
    expect(compared.alpha).toBe(comparisonAlpha(1));
  });

  it('asks more of a later comparison of the same athlete', () => {
    const later = compareTrials(inOrder(...blocks(better), ...blocks(better)), terms({ number: 20 }));
    expect(later.verdict.kind).toBe('not-settled');
  });

  it('tells each day apart, and says so when one went the other way', () => {
    const agreeing = compareTrials(inOrder(...blocks(better, monday), ...blocks(better, tuesday)), terms());
    expect(agreeing.days.map(({ day, countA, countB }) => [day, countA, countB])).toEqual([['2026-03-02', 5, 5], ['2026-03-03', 5, 5]]);
    expect(agreeing.signsDiffer).toBe(false);
    const turned = compareTrials(inOrder(...blocks(better, monday), block('a', better, tuesday), block('b', old, tuesday)), terms());
    expect(turned.days.map(({ difference }) => Math.sign(difference))).toEqual([-1, 1]);
    expect(turned.signsDiffer).toBe(true);
  });

  it('does not use a day that holds one of them only', () => {
    const alone = block('a', [9, 8, 9, 8, 9], tuesday);
    const { verdict, days } = compareTrials(inOrder(...blocks(better), ...blocks(better), alone), terms());
    expect(days).toHaveLength(1);
    expect(verdict).toEqual(compared.verdict);
  });

  it('marks an A and then a B, until a block of A comes again', () => {
    const mixed = (...thrown: ReturnType<typeof block>[]): boolean => compareTrials(inOrder(...thrown), terms()).gripAndTimeMixed;
    const [a, b] = blocks(same) as [ReturnType<typeof block>, ReturnType<typeof block>];
    expect(mixed(a)).toBe(false);
    expect(mixed(a, a, b, b)).toBe(true);
    expect(mixed(b, a)).toBe(true);
    expect(mixed(a, b, a)).toBe(false);
    expect(mixed(a, b, a, b)).toBe(false);
  });

  it('over days marks the same order each day, and not orders that take turns', () => {
    const mixed = (...thrown: ReturnType<typeof block>[]): boolean => compareTrials(inOrder(...thrown), terms()).gripAndTimeMixed;
    const [a1, b1] = blocks(same, monday) as [ReturnType<typeof block>, ReturnType<typeof block>];
    const [a2, b2] = blocks(same, tuesday) as [ReturnType<typeof block>, ReturnType<typeof block>];
    expect(mixed(a1, b1, a2, b2)).toBe(true);
    expect(mixed(a1, b1, b2, a2)).toBe(false);
    expect(mixed(a1, b1, a2.slice(0, 1), b2.slice(0, 1), a2.slice(1, 2))).toBe(true);
  });

  it('says that the spread changed above half again as much', () => {
    const wild = old.map((miss) => 2.68 + 2 * (miss - 2.68));
    const { spreadRatio, spreadChanged } = compareTrials(inOrder(...blocks(wild)), terms());
    expect(spreadRatio).toBeCloseTo(2, 10);
    expect(spreadChanged).toBe(true);
    expect(compared.spreadChanged).toBe(false);
  });

  it('shows the verdict with the excluded throws where it is another one', () => {
    const outside = [missing('b', 9, { excluded: true }), missing('b', 8, { excluded: true })];
    const { verdict, withExcluded } = compareTrials(inOrder(...blocks(better), ...blocks(better), outside), terms());
    expect(verdict).toEqual(compared.verdict);
    expect(withExcluded?.kind).toBe('not-settled');
    const harmless = [missing('b', 1, { excluded: true })];
    expect(compareTrials(inOrder(...blocks(better), ...blocks(better), harmless), terms()).withExcluded).toBeNull();
    expect(compared.withExcluded).toBeNull();
  });

  it('flags a throw far from the others and leaves it in', () => {
    const slip = [...better, 12];
    const { slips, days } = compareTrials(inOrder(block('a', old), block('b', slip)), terms());
    expect(slips).toEqual([11]);
    expect(days[0]!.countB).toBe(6);
    expect(compared.slips).toEqual([]);
  });

  it('after pain tells no number of further throws', () => {
    const stopped = compareTrials(inOrder(...blocks(same)), terms({ mayThrow: null }));
    expect(stopped.verdict.kind).toBe('not-settled');
    expect(stopped.outlook).toEqual({ kind: 'stopped' });
  });

  it('knows whether today is one of its days', () => {
    const open = (today: string) => compareTrials(inOrder(...blocks(same)), terms({ today, mayThrow: mayThrow(500) })).outlook;
    expect(open('2026-03-02')).toMatchObject({ kind: 'more', until: 'settled' });
    expect(open('2026-03-09')).toMatchObject({ kind: 'more', ofBAlone: null });
  });

  it('warns when neighbouring throws resemble each other', () => {
    const waves = Array.from({ length: 20 }, (_, i) => Math.sin(i / 2));
    const saw = Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 1 : -1) + i / 100);
    const alike = (misses: readonly number[]) => compareTrials(inOrder(block('a', misses), block('b', misses)), terms()).neighboursAlike;
    expect(alike(waves)).toBe(true);
    expect(alike(saw)).toBe(false);
    expect(alike(waves.slice(0, 9))).toBe(false);
  });

  it('without a throw says too few', () => {
    const { verdict, days, acrossZone, spreadRatio } = compareTrials([], terms());
    expect([verdict.kind, days, acrossZone, spreadRatio]).toEqual(['too-few', [], null, null]);
  });
});

describe('a shift straight across the zone', () => {
  const at = (trial: 'a' | 'b', verticalIn: number, armSideIn: number) =>
    missing(trial, 0, { verticalM: zone.verticalM + inchesToM(verticalIn), armSideM: zone.armSideM + inchesToM(armSideIn) });
  const cloud = (trial: 'a' | 'b', verticalIn: number, armSideIn: number) =>
    [[-1, 0], [1, 0], [0, -1], [0, 1], [0, 0]].map(([up, side]) => at(trial, verticalIn + up!, armSideIn + side!));
  const across = (a: ReturnType<typeof cloud>, b: ReturnType<typeof cloud>) => compareTrials(inOrder(a, b), terms()).acrossZone;

  it('is not seen by the miss, and that is said', () => {
    const { verdict } = compareTrials(inOrder(cloud('a', 5, 0), cloud('b', -5, 0)), terms());
    expect(verdict.kind).toBe('not-settled');
    expect(across(cloud('a', 5, 0), cloud('b', -5, 0))).toBe('between');
    expect(across(cloud('a', 3, 3), cloud('b', -3, -2))).toBe('between');
  });

  it('is said too when both trials miss to opposite sides', () => {
    const wide = (trial: 'a' | 'b') => [at(trial, 6, 0), at(trial, 5, 1), at(trial, -6, 0), at(trial, -5, 1), at(trial, 0, 0)];
    expect(across(wide('a'), wide('b'))).toBe('both-sides');
    expect(across(wide('a'), cloud('b', 0.4, 0))).toBeNull();
  });

  it('is none on one side of the zone, inside it, or past it', () => {
    expect(across(cloud('a', 6, 0), cloud('b', 3, 0))).toBeNull();
    expect(across(cloud('a', 0.4, 0), cloud('b', -0.4, 0))).toBeNull();
    expect(across(cloud('a', 6, 4), cloud('b', -4, 6))).toBeNull();
  });
});

describe('the measures beside the verdict', () => {
  const varied = (trial: 'a' | 'b', mph: number, tilts: readonly number[]) =>
    tilts.map((tiltRad, i) => missing(trial, old[i]!, { speedMps: mphToMps(mph + [-0.4, 0.2, 0, 0.3, -0.1][i]!), tiltRad }));

  const twice = (...thrown: ReturnType<typeof varied>[]) => [...thrown, ...thrown];

  it('get an interval each and no better or worse', () => {
    const { measures } = compareTrials(inOrder(...twice(varied('a', -7, [2, 2.1, 1.9, 2.05, 1.95]), varied('b', -10, [2.4, 2.5, 2.3, 2.45, 2.35]))), terms());
    expect(measures.speedMps).toMatchObject({ kind: 'interval' });
    if (measures.speedMps.kind !== 'interval' || measures.tiltRad.kind !== 'interval') throw new Error('no interval');
    expect(measures.speedMps.difference).toBeCloseTo(mphToMps(-3), 12);
    expect(measures.speedMps.high).toBeLessThan(0);
    expect(measures.tiltRad.difference).toBeCloseTo(0.4, 12);
    expect(Object.keys(measures.tiltRad)).toEqual(['kind', 'difference', 'low', 'high']);
  });

  it('are wider than the interval of a single one, for there are four', () => {
    const throws = inOrder(...blocks(same), ...blocks(same));
    const { verdict, measures } = compareTrials(throws, terms());
    if (verdict.kind === 'too-few' || measures.verticalM.kind !== 'interval') throw new Error('no interval');
    expect(measures.verticalM.high - measures.verticalM.low).toBeGreaterThan(inchesToM(2) * (verdict.high - verdict.low));
  });

  it('take tilt the short way round, across twelve', () => {
    const { measures } = compareTrials(inOrder(varied('a', -9, [6.2, 6.1, 6.25, 6.15, 6.2]), varied('b', -9, [0.1, 0.2, 0.15, 0.05, 0.1])), terms());
    if (measures.tiltRad.kind !== 'interval') throw new Error(measures.tiltRad.kind);
    expect(measures.tiltRad.difference).toBeCloseTo(0.12 - 6.18 + 2 * Math.PI, 10);
  });

  it('call an axis that points everywhere too scattered', () => {
    const { measures } = compareTrials(inOrder(varied('a', -9, [0, 1.5, 3, 4.5, 6]), varied('b', -9, [2, 2.1, 1.9, 2.05, 1.95])), terms());
    expect(measures.tiltRad).toEqual({ kind: 'too-scattered' });
  });

  it('say why one is missing, and take what is there', () => {
    const blind = { tiltRad: 'not-visible', speedMps: 'not-sent' } as const;
    const throws = inOrder(...blocks(better, blind), varied('a', -9, [2, 2.1, 1.9, 2.05, 1.95]));
    const { measures } = compareTrials(throws, terms());
    expect(measures.tiltRad).toEqual({ kind: 'missing', why: 'not-visible' });
    expect(measures.speedMps).toEqual({ kind: 'missing', why: 'not-sent' });
    expect(measures.verticalM.kind).toBe('interval');
  });

  it('are too few before the fifth throw of either', () => {
    const { measures } = compareTrials(inOrder(block('a', old), block('b', better.slice(1))), terms());
    expect(Object.values(measures).map(({ kind }) => kind)).toEqual(['too-few', 'too-few', 'too-few', 'too-few']);
  });
});
