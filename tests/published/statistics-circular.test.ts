import { expect, it } from 'vitest';
import { angularDeviationRad, circularMean, circularSdRad, deviationsRad, wrapRad } from '../../core/statistics/circular.ts';
import { degToRad, radToDeg } from '../../core/units/convert.ts';

// Published: Zar, Biostatistical Analysis, example 26.4; degrees rounded as printed.
it('the eight angles of Zar meet at 99°, resultant 0.82522, angular deviation 34°, circular SD 36°', () => {
  const { meanRad, resultantLength } = circularMean([45, 55, 81, 96, 110, 117, 132, 154].map(degToRad));
  expect(Math.round(radToDeg(meanRad!))).toBe(99);
  expect(Math.abs(resultantLength - 0.82522)).toBeLessThan(1.5e-5);
  expect(Math.round(radToDeg(angularDeviationRad(resultantLength)))).toBe(34);
  expect(Math.round(radToDeg(circularSdRad(resultantLength)))).toBe(36);
});

// Identities: no source needed.
it.each([
  { angles: [350, 10], mean: 0, deviations: [-10, 10] },
  { angles: [355, 5, 15], mean: 5, deviations: [-10, 0, 10] },
])('$angles° meet at $mean°, across north', ({ angles, mean, deviations }) => {
  const anglesRad = angles.map(degToRad);
  const { meanRad } = circularMean(anglesRad);
  expect(radToDeg(meanRad!)).toBeCloseTo(mean, 10);
  deviationsRad(anglesRad, meanRad!).forEach((deviation, i) => expect(radToDeg(deviation)).toBeCloseTo(deviations[i]!, 10));
});

it('half a turn is written +180°, never −180°', () => {
  for (const halfTurn of [Math.PI, -Math.PI]) expect(wrapRad(halfTurn)).toBe(Math.PI);
});
