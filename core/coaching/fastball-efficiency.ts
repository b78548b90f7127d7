import type { Reading } from '../facts/views.ts';
import { summarise } from '../statistics/window.ts';

/** Over this a fastball favours a turnover changeup, under the other a seam-effect one. Common practice of the trade. */
export const EFFICIENCY_HIGH = 0.95;
export const EFFICIENCY_LOW = 0.8;

/** Whether an efficiency favours neither. */
export function favoursNeither(efficiency: number): boolean {
  return efficiency >= EFFICIENCY_LOW && efficiency <= EFFICIENCY_HIGH;
}

/** Spin efficiency of the athlete's fastball with its 95 % interval, or why there is none. */
export type FastballEfficiency =
  | { readonly kind: 'known'; readonly mean: number; readonly low: number; readonly high: number; readonly count: number }
  | { readonly kind: 'unknown'; readonly because: 'not-visible' | 'not-sent' | 'too-few'; readonly count: number };

/** From the fastballs of one stage. An interval is kept within 0 and 1; fastballs that all read the same count as exact. */
export function fastballEfficiency(readings: readonly Reading[]): FastballEfficiency {
  const known = readings.filter((reading) => typeof reading === 'number');
  const [first] = known;
  if (first === undefined) return { kind: 'unknown', because: whyNone(readings), count: 0 };
  if (known.length >= 3 && known.every((value) => value === first)) return { kind: 'known', mean: first, low: first, high: first, count: known.length };
  const found = summarise(known);
  if (found.kind === 'too-few' || known.length < 3) return { kind: 'unknown', because: 'too-few', count: known.length };
  return { kind: 'known', mean: found.mean, low: Math.max(0, found.low), high: Math.min(1, found.high), count: found.count };
}

function whyNone(readings: readonly Reading[]): 'not-visible' | 'not-sent' | 'too-few' {
  if (readings.length === 0) return 'too-few';
  return readings.includes('not-visible') ? 'not-visible' : 'not-sent';
}
