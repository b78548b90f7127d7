import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankFamilies } from '../../../core/coaching/families.ts';
import type { FamilyInput } from '../../../core/coaching/family-reasons.ts';
import type { Family } from '../../../core/facts/vocabulary.ts';
import { fastballEfficiency } from '../../../core/coaching/fastball-efficiency.ts';
import type { TriedFamily } from '../../../core/facts/advice-view.ts';
import { inchesToM } from '../../../core/units/convert.ts';

const known = (mean: number, half = 0.005): FamilyInput['efficiency'] => ({ kind: 'known', mean, low: mean - half, high: mean + half, count: 8 });
const athlete = (more: Partial<FamilyInput> = {}): FamilyInput => ({
  efficiency: known(0.97), fastball: { verticalM: inchesToM(16), armSideM: inchesToM(6) }, mainFastball: 'four-seam', sight: 'full-flight', seamEffect: null, tried: [], observed: [], ...more,
});
const tried = (family: Family, throws: number, meanMiss: number, more: Partial<TriedFamily> = {}): TriedFamily => ({ family, throws, meanMiss, separation: null, comfortable: null, ...more });
const order = (input: FamilyInput): Family[] => rankFamilies(input).ranking.map(({ family }) => family);
const degree = (family: Family, input: FamilyInput): number => rankFamilies(input).ranking.find((fit) => fit.family === family)!.degree;
const codes = (family: Family, input: FamilyInput): string[] => rankFamilies(input).ranking.find((fit) => fit.family === family)!.reasons.map(({ code }) => code);

describe('which family suits whom', () => {
  it('moves by what the coach has seen on its own trials, and tells it among its reasons', () => {
    const seen = (what: 'slight-cut' | 'forced-turn' | 'loose-wrist-and-forearm', family: Family = 'seam-effect') => athlete({ observed: [{ family, what }] });
    expect(degree('seam-effect', seen('slight-cut'))).toBeGreaterThan(degree('seam-effect', athlete()));
    expect(degree('seam-effect', seen('forced-turn'))).toBeLessThan(degree('seam-effect', athlete()));
    expect(degree('turnover', seen('forced-turn'))).toBe(degree('turnover', athlete()));
    expect(degree('turnover', seen('loose-wrist-and-forearm', 'turnover'))).toBe(degree('turnover', athlete()));
    expect(codes('turnover', seen('loose-wrist-and-forearm', 'turnover'))).toContain('seen-loose-wrist-and-forearm');
  });

  it('an efficient fastball favours a turnover changeup', () => {
    expect(rankFamilies(athlete())).toMatchObject({ kind: 'lead-with', ranking: [{ family: 'turnover' }, {}, { family: 'seam-effect' }] });
    expect(codes('turnover', athlete())).toContain('efficiency-favours');
    expect(codes('seam-effect', athlete())).toContain('efficiency-speaks-against');
  });

  it('an inefficient fastball favours a seam-effect one', () => {
    expect(rankFamilies(athlete({ efficiency: known(0.76) }))).toMatchObject({ kind: 'lead-with', ranking: [{ family: 'seam-effect' }, {}, { family: 'turnover' }] });
  });

  it('in between all three are tried in turn, in this order', () => {
    const between = athlete({ efficiency: known(0.88) });
    expect(rankFamilies(between).kind).toBe('try-all');
    expect(order(between)).toHaveLength(3);
    expect(codes('turnover', between)).toContain('efficiency-between');
  });

  it('near the threshold too, until every family was tried enough to say something', () => {
    const near = athlete({ efficiency: known(0.93) });
    expect(rankFamilies(near)).toMatchObject({ kind: 'try-all', ranking: [{ family: 'turnover' }, {}, {}] });
    const most = [tried('turnover', 15, 0.2), tried('seam-effect', 15, 3)];
    expect(rankFamilies({ ...near, tried: [...most, tried('split', 24, 3)] }).kind).toBe('try-all');
    expect(rankFamilies({ ...near, tried: [...most, tried('split', 25, 3)] })).toMatchObject({ kind: 'lead-with', ranking: [{ family: 'turnover' }, {}, {}] });
  });

  it('an interval that straddles a threshold shows, and is judged softer than one that does not', () => {
    const wide = athlete({ efficiency: { kind: 'known', mean: 0.95, low: 0.89, high: 1, count: 4 } });
    expect(codes('turnover', wide)).toContain('straddles-95');
    expect(codes('turnover', wide)).not.toContain('straddles-80');
    expect(codes('seam-effect', athlete({ efficiency: known(0.8, 0.03) }))).toContain('straddles-80');
    expect(codes('turnover', athlete())).not.toContain('straddles-95');
    expect(degree('turnover', wide)).toBeLessThan(degree('turnover', athlete({ efficiency: known(0.95, 0.0001) })));
    expect(rankFamilies(wide).wouldChange).toContainEqual({ code: 'measure-more-fastballs' });
  });

  it('has no step anywhere: a hundredth of efficiency never turns the advice round', () => {
    for (let efficiency = 0.7; efficiency < 0.99; efficiency += 0.01) {
      const change = degree('turnover', athlete({ efficiency: known(efficiency + 0.01) })) - degree('turnover', athlete({ efficiency: known(efficiency) }));
      expect(change).toBeGreaterThanOrEqual(0);
      expect(change).toBeLessThan(0.12);
    }
  });

  it('an unknown efficiency leaves all three open and says what to measure', () => {
    const blind = athlete({ efficiency: { kind: 'unknown', because: 'not-visible', count: 0 } });
    expect(rankFamilies(blind)).toMatchObject({ kind: 'try-all', wouldChange: [{ code: 'measure-efficiency' }, {}, {}, {}] });
    expect(degree('turnover', blind)).toBe(0.5);
  });

  it('a sinker leaves little vertical room and speaks for a split', () => {
    const sinker = athlete({ efficiency: known(0.88), mainFastball: 'sinker' });
    expect(order(sinker)[0]).toBe('split');
    expect(codes('split', sinker)).toContain('room-for-split');
    expect(codes('turnover', sinker)).toContain('little-vertical-room');
  });

  it('so does a four-seam that moves like a sinker, the more the flatter it is', () => {
    const flat = (inches: number): FamilyInput => athlete({ efficiency: known(0.88), fastball: { verticalM: inchesToM(inches), armSideM: 0 } });
    expect(degree('split', flat(6))).toBeGreaterThan(degree('split', flat(9)));
    expect(degree('split', flat(9))).toBeGreaterThan(degree('split', flat(13)));
  });
});

describe('what was tried', () => {
  it('outweighs what the fastball suggests, once there are throws enough', () => {
    const against = (throws: number): FamilyInput => athlete({ tried: [tried('turnover', throws, 4), tried('seam-effect', throws, -0.5)] });
    expect(order(against(5))[0]).not.toBe('seam-effect');
    expect(order(against(30))[0]).toBe('seam-effect');
  });

  it('in a handful of throws proves nothing', () => {
    expect(degree('split', athlete({ tried: [tried('split', 4, -1)] }))).toBeCloseTo(degree('split', athlete()), 1);
    expect(codes('split', athlete({ tried: [tried('split', 4, -1)] }))).toContain('tried-too-few');
  });

  it('weighs less for a split than for another family, because it scatters most', () => {
    const gain = (family: Family): number => weightOf(family, 'tried-near-target', athlete({ tried: [tried(family, 20, -1)] }));
    expect(gain('split')).toBeLessThan(gain('seam-effect'));
    expect(gain('split')).toBeGreaterThan(0);
  });

  it('thrown from straight behind the ball makes a seam-effect changeup a slower copy of the fastball', () => {
    const copy = tried('seam-effect', 15, 3, { separation: { verticalM: inchesToM(-2), armSideM: inchesToM(1) } });
    expect(codes('seam-effect', athlete({ tried: [copy] }))).toContain('slower-copy');
    expect(codes('seam-effect', athlete({ tried: [{ ...copy, separation: { verticalM: inchesToM(-7), armSideM: 0 } }] }))).not.toContain('slower-copy');
  });

  it('with an uncomfortable grip counts against it', () => {
    expect(degree('turnover', athlete({ tried: [tried('turnover', 10, 0, { comfortable: false })] }))).toBeLessThan(degree('turnover', athlete({ tried: [tried('turnover', 10, 0)] })));
  });

  it('leaves to be tried what has too few throws, a split for longest', () => {
    expect(rankFamilies(athlete({ tried: [tried('turnover', 15, 0), tried('split', 20, 0)] })).wouldChange)
      .toEqual([{ code: 'try-it', family: 'split', throws: 5 }, { code: 'try-it', family: 'seam-effect', throws: 15 }]);
  });
});

describe('a seam effect', () => {
  it('cannot be seen by a device that reads spin only, and that counts neither for nor against it', () => {
    const blind = athlete({ sight: 'spin-only', seamEffect: 'seen' });
    expect(codes('seam-effect', blind)).toContain('device-cannot-see-it');
    expect(degree('seam-effect', blind)).toBe(degree('seam-effect', athlete()));
    expect(rankFamilies(blind).wouldChange).toContainEqual({ code: 'see-the-flight' });
  });

  it('that was seen speaks for its family, one that was not speaks against it, and doubt does neither', () => {
    const of = (seamEffect: FamilyInput['seamEffect']): number => degree('seam-effect', athlete({ seamEffect }));
    expect(of('seen')).toBeGreaterThan(of('cannot-tell'));
    expect(of('not-seen')).toBeLessThan(of('cannot-tell'));
    expect(of('cannot-tell')).toBe(of(null));
  });
});

describe('the degrees', () => {
  it('stay between 0 and 1, are the logistic of their reasons’ weights, and stand in falling order', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const one = (family: Family) => fc.record({
      family: fc.constant(family), throws: fc.integer({ min: 0, max: 200 }), meanMiss: fc.option(fc.double({ min: -20, max: 50, noNaN: true })),
      separation: fc.constant(null), comfortable: fc.option(fc.boolean()),
    });
    const all = fc.tuple(one('turnover'), one('seam-effect'), one('split'));
    fc.assert(fc.property(share, share, all, (a, b, tries) => {
      const { ranking } = rankFamilies(athlete({ efficiency: { kind: 'known', mean: (a + b) / 2, low: Math.min(a, b), high: Math.max(a, b), count: 5 }, tried: tries }));
      const degrees = ranking.map((fit) => fit.degree);
      expect(degrees.toSorted((x, y) => y - x)).toEqual(degrees);
      for (const { degree: found, reasons } of ranking) {
        expect(found).toBeGreaterThan(0);
        expect(found).toBeLessThan(1);
        expect(Math.log(found / (1 - found))).toBeCloseTo(reasons.reduce((sum, { weight }) => sum + weight, 0), 6);
      }
    }), { seed: 12, numRuns: 200 });
  });
});

describe('the efficiency of the fastball', () => {
  it('is a mean with its interval, from three fastballs on and never beyond 1', () => {
    expect(fastballEfficiency([0.95, 0.99, 1, 0.97])).toMatchObject({ kind: 'known', count: 4, high: 1 });
    expect(fastballEfficiency([0.9, 0.92])).toEqual({ kind: 'unknown', because: 'too-few', count: 2 });
    expect(fastballEfficiency([0.9, 0.9, 0.9])).toMatchObject({ kind: 'known', low: 0.9, high: 0.9 });
  });

  it('is unknown with its reason where the device gives none', () => {
    expect(fastballEfficiency(['not-visible', 'not-visible'])).toMatchObject({ kind: 'unknown', because: 'not-visible' });
    expect(fastballEfficiency(['not-sent'])).toMatchObject({ kind: 'unknown', because: 'not-sent' });
    expect(fastballEfficiency([])).toMatchObject({ kind: 'unknown', because: 'too-few' });
  });
});

function weightOf(family: Family, code: string, input: FamilyInput): number {
  return rankFamilies(input).ranking.find((fit) => fit.family === family)!.reasons.find((one) => one.code === code)!.weight;
}
