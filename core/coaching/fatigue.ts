import type { FatigueSign } from '../facts/care-view.ts';
import { ewma } from '../statistics/ewma.ts';
import { moments } from '../statistics/moments.ts';

/** Fastballs that the rest are held against. House rule, like every number here: no published threshold exists. */
const OWN_FIRST = 15;
const LAMBDA = 0.3;
const ASK_AT = -0.02;
const ASK_AFTER_THROWS = 3;
const END_AT = -0.04;

/**
 * Fastball speed against the athlete's own first fifteen of the session, smoothed. It only ever asks a question: one
 * study of young pitchers found no speed lost with fatigue (Keeley et al. 2013), so speed that holds says nothing.
 * @param speedsMps fastballs of one stage, in the order thrown, excluded ones left out
 */
export function fatigueSign(speedsMps: readonly number[]): FatigueSign {
  const first = moments(speedsMps.slice(0, OWN_FIRST));
  if (first === null || speedsMps.length <= OWN_FIRST) return { kind: 'forming', have: Math.min(speedsMps.length, OWN_FIRST), need: OWN_FIRST };
  const changes = ewma(speedsMps.slice(OWN_FIRST), LAMBDA, first.mean).map((speedMps) => speedMps / first.mean - 1);
  const change = changes.at(-1)!;
  if (change <= END_AT) return { kind: 'ask-to-end', change };
  const lastThree = changes.slice(-ASK_AFTER_THROWS);
  const sinks = lastThree.length === ASK_AFTER_THROWS && lastThree.every((one) => one <= ASK_AT);
  return { kind: sinks ? 'ask-the-pitcher' : 'no-speed-sign', change };
}
