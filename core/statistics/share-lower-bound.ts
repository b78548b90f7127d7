import { risingRoot } from './rising-root.ts';

/**
 * Lower bound of a share that may be looked at after every throw: with confidence 1 − α the true share is never below
 * any of the bounds shown. The smallest p against which the evidence of `shareEvidence` stays under 1/α; 0 without a hit.
 * Throws RangeError unless 0 ≤ hits ≤ count, both whole.
 *
 * Beta mixture of Robbins, Annals of Mathematical Statistics 41:1397 (1970).
 */
export function anytimeShareLowerBound(hits: number, count: number, alpha = 0.05): number {
  checkShare(hits, count);
  if (hits === 0) return 0;
  // Below hits/count the evidence falls as p rises, and at hits/count it is at most 1.
  const limit = -Math.log(alpha);
  const [misses, logBeta] = [count - hits, logBetaOfCounts(hits, count - hits)];
  return risingRoot((p) => limit - logEvidence(hits, misses, logBeta, p), 0, hits / count);
}

/** Evidence that the true share is above p: B(x+1, n−x+1)/(pˣ(1−p)ⁿ⁻ˣ), 0 where p > x/n. It is real when it reaches 1/α. */
export function shareEvidence(hits: number, count: number, p: number): number {
  checkShare(hits, count);
  return p * count > hits ? 0 : Math.exp(logEvidence(hits, count - hits, logBetaOfCounts(hits, count - hits), p));
}

function logEvidence(hits: number, misses: number, logBeta: number, p: number): number {
  return logBeta - (hits === 0 ? 0 : hits * Math.log(p)) - (misses === 0 ? 0 : misses * Math.log1p(-p));
}

/** From so many on both sides Stirling's series is right to the last digits of its terms, and the product only slower. */
const MANY = 100;

/** ln B(x+1, y+1) = −ln((x+y+1)·C(x+y, x)), for whole x and y. */
function logBetaOfCounts(x: number, y: number): number {
  if (Math.min(x, y) >= MANY) return logFactorial(x) + logFactorial(y) - logFactorial(x + y) - Math.log(x + y + 1);
  let log = -Math.log(x + y + 1);
  for (let i = 1; i <= Math.min(x, y); i += 1) log += Math.log(i / (Math.max(x, y) + i));
  return log;
}

/** ln n! for large n by Stirling's series (Abramowitz & Stegun, 6.1.41). */
function logFactorial(n: number): number {
  return (n + 0.5) * Math.log(n) - n + 0.5 * Math.log(2 * Math.PI) + 1 / (12 * n) - 1 / (360 * n ** 3) + 1 / (1260 * n ** 5);
}

function checkShare(hits: number, count: number): void {
  if (!Number.isInteger(hits) || !Number.isInteger(count) || hits < 0 || hits > count) {
    throw new RangeError(`${hits} of ${count} is not a share`);
  }
}
