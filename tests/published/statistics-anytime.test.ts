import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anytimeEvidence, anytimeRadius } from '../../core/statistics/anytime-t.ts';

const effective = (n0: number, n1: number): number => (n0 * n1) / (n0 + n1);
const radius = (n0: number, n1: number, alpha = 0.05): number =>
  anytimeRadius({ effectiveN: effective(n0, n1), freedom: n0 + n1 - 2, alpha });
const evidence = (t: number, n0: number, n1: number): number =>
  anytimeEvidence({ t, effectiveN: effective(n0, n1), freedom: n0 + n1 - 2 });
const relative = (found: number, expected: number): number => Math.abs(found / expected - 1);

// Computed independently (SciPy) from the formulas of Pérez-Ortiz, Lardy, de Heide & Grünwald (2024).
describe('evidence and interval that hold at every look', () => {
  it('ten throws against ten: E is 1/√6 at t = 0 and 1.944489068128406 at t = 2', () => {
    expect(relative(evidence(0, 10, 10), 1 / Math.sqrt(6))).toBeLessThan(1e-14);
    expect(relative(evidence(2, 10, 10), 1.944489068128406)).toBeLessThan(1e-14);
  });

  it.each([
    [10, 10, 1.559981677086629],
    [15, 10, 1.369499286328081],
  ])('%i against %i: the interval reaches %f SD to either side', (n0, n1, expected) => {
    expect(relative(radius(n0, n1), expected)).toBeLessThan(1e-14);
  });

  it('three against three can say nothing', () => {
    expect(radius(3, 3)).toBe(Infinity);
  });

  it('with ten million degrees of freedom it is the normal mixture, 1.242328', () => {
    expect(anytimeRadius({ effectiveN: 6, freedom: 1e7, alpha: 0.05 }).toFixed(6)).toBe('1.242328');
  });
});

// Published: Howard, Ramdas, McAuliffe & Sekhon, "Time-uniform, nonparametric, nonasymptotic confidence sequences",
// unit test of their reference code: v = 100, α = 0.05, two-sided bound at V = 100.
it('for very many degrees of freedom it meets the normal-mixture bound of Howard, Ramdas, McAuliffe and Sekhon', () => {
  const [v, alpha] = [100, 0.05];
  const twice = 2 * Math.log(1 / alpha);
  const rho = v / (twice + Math.log1p(twice));
  expect(rho.toFixed(5)).toBe('12.60056');
  // S has the variance V under no difference: S = d·V/s, so the bound on S is V times the radius.
  const bound = v * anytimeRadius({ effectiveN: v, freedom: 1e12, alpha, priorPrecision: rho });
  expect(bound.toFixed(5)).toBe('30.35209');
  const logMartingale = Math.log(anytimeEvidence({ t: 10 / Math.sqrt(v), effectiveN: v, freedom: 1e12, priorPrecision: rho }));
  expect(logMartingale.toFixed(7)).toBe('-0.6510052');
});

describe('for all trials', () => {
  const count = fc.integer({ min: 2, max: 200 });
  const alpha = fc.double({ min: 1e-4, max: 0.2, noNaN: true });

  it('the evidence at the edge of the interval is 1/α, and the same for a difference the other way', () => {
    fc.assert(
      fc.property(count, count, alpha, (n0, n1, level) => {
        const edge = radius(n0, n1, level) * Math.sqrt(effective(n0, n1));
        fc.pre(Number.isFinite(edge) && edge < 1e3);
        expect(relative(evidence(edge, n0, n1), 1 / level)).toBeLessThan(1e-8);
        expect(evidence(-edge, n0, n1)).toBe(evidence(edge, n0, n1));
      }),
      { seed: 71 },
    );
  });

  it('the interval is wider than the ordinary t interval, which holds for one look only', () => {
    fc.assert(
      fc.property(count, count, alpha, (n0, n1, level) => {
        const ordinary = tQuantile(1 - level / 2, n0 + n1 - 2) / Math.sqrt(effective(n0, n1));
        expect(radius(n0, n1, level)).toBeGreaterThan(ordinary);
      }),
      { seed: 72 },
    );
  });
});
