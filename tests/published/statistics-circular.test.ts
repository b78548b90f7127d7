import { expect, it } from 'vitest';
import { angularDeviationRad, circularMean, circularSdRad, deviationsRad, wrapRad } from '../../core/statistics/circular.ts';
import { blockedDifference } from '../../core/statistics/blocked-difference.ts';
import { tallyOf } from '../../core/statistics/tally.ts';
import { unrolled } from '../../core/statistics/two-angles.ts';
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

// Published: Zar, Biostatistical Analysis, example 27.7, Watson–Williams test: F 1.61. Ours are the ordinary rules on
// angles unrolled between both means, another approximation of the same thing: t² meets F within a hundredth.
it('two sets of angles differ as much as the Watson–Williams test of Zar says', () => {
  const [a, b] = [[94, 65, 45, 52, 38, 47, 73, 82, 90, 40, 87], [77, 70, 61, 45, 50, 35, 48, 65, 36]].map((degrees) => degrees.map(degToRad));
  const turned = unrolled(a!, b!);
  if (turned.kind !== 'deviations') throw new Error(turned.kind);
  const found = blockedDifference([{ a: tallyOf(turned.a), b: tallyOf(turned.b) }])!;
  const tSquared = (found.difference ** 2 / found.variance) * found.design.effectiveN;
  expect(found.design.freedom).toBe(18);
  expect(Math.abs(tSquared / 1.61 - 1)).toBeLessThan(0.01);
});
