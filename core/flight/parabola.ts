import type { ConstantAcceleration } from './constant-acceleration.ts';
import type { Columns } from './path-samples.ts';

/**
 * Constant acceleration through samples by weighted least squares, t = 0 at their mean time; one normal matrix serves all three axes.
 * Null where the times do not carry a parabola.
 */
export function parabolaThrough({ times, places, count }: Columns, weights: Float64Array): ConstantAcceleration | null {
  let [s0, s1, s2, s3, s4] = [0, 0, 0, 0, 0];
  for (let i = 0; i < count; i += 1) {
    const t = times[i]!;
    const w = weights[i]!;
    const wtt = w * t * t;
    s0 += w;
    s1 += w * t;
    s2 += wtt;
    s3 += wtt * t;
    s4 += wtt * t * t;
  }
  // Adjugate of the symmetric matrix [[s0 s1 s2] [s1 s2 s3] [s2 s3 s4]].
  const [aa, ab, ac] = [s2 * s4 - s3 * s3, s2 * s3 - s1 * s4, s1 * s3 - s2 * s2];
  const [bb, bc, cc] = [s0 * s4 - s2 * s2, s1 * s2 - s0 * s3, s0 * s2 - s1 * s1];
  const determinant = s0 * aa + s1 * ab + s2 * ac;
  if (!(determinant > 1e-12 * s0 * s2 * s4)) return null;
  const triples = places.map((place): readonly [number, number, number] => {
    let [r0, r1, r2] = [0, 0, 0];
    for (let i = 0; i < count; i += 1) {
      const weighed = weights[i]! * place[i]!;
      r0 += weighed;
      r1 += weighed * times[i]!;
      r2 += weighed * times[i]! * times[i]!;
    }
    return [(aa * r0 + ab * r1 + ac * r2) / determinant, (ab * r0 + bb * r1 + bc * r2) / determinant, (2 * (ac * r0 + bc * r1 + cc * r2)) / determinant];
  });
  const row = (of: 0 | 1 | 2): [number, number, number] => [triples[0]![of], triples[1]![of], triples[2]![of]];
  return { positionM: row(0), velocityMps: row(1), accelerationMps2: row(2) };
}
