import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { correctedMad, medianAbsoluteDeviation } from '../../../core/statistics/spread.ts';
import { seededNormal } from './seeded-normals.ts';

describe('robust spread of a fastball baseline', () => {
  it('four fastballs have none, five have one', () => {
    expect(correctedMad([40, 41, 39, 40.5])).toBeNull();
    expect(correctedMad([40, 41, 39, 40.5, 40.2])).toBeCloseTo(0.3 * 1.80393, 12);
    expect(medianAbsoluteDeviation([])).toBeNull();
  });

  // Computed independently of the table: 40,000 seeded samples a size; three standard errors are below 0.01.
  it.each([5, 6, 7, 8, 10, 17, 30, 31, 60])('of %i normal throws estimates their SD without bias', (count) => {
    const normal = seededNormal(count);
    const runs = 40_000;
    let sum = 0;
    for (let run = 0; run < runs; run += 1) sum += correctedMad(Array.from({ length: count }, normal))!;
    expect(Math.abs(sum / runs - 1)).toBeLessThan(0.01);
  });

  it('a fastball that slips leaves it within the scatter of the others', () => {
    expect(correctedMad([40.1, 40.3, 39.9, 40.0, 400])).toBeLessThan(0.5);
  });

  it('more than half of the readings alike give zero, not a division by it', () => {
    expect(correctedMad([40, 40, 40, 41, 39])).toBe(0);
  });

  it('ignores a shift and follows a change of unit', () => {
    const fastballs = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 5, maxLength: 40 });
    fc.assert(
      fc.property(fastballs, fc.double({ min: -100, max: 100, noNaN: true }), fc.constantFrom(-1, 0.0254, 3.28084), (values, shift, factor) => {
        const moved = correctedMad(values.map((value) => value * factor + shift))!;
        expect(Math.abs(moved - correctedMad(values)! * Math.abs(factor))).toBeLessThan(1e-10);
      }),
      { seed: 31 },
    );
  });
});
