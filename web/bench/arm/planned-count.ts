import { typedNumber } from '../fields/typed-number.ts';

/** More than that nobody plans for one day. */
const MOST_PLANNED = 200;

export type PlannedCount = { readonly kind: 'count'; readonly count: number | null } | { readonly kind: 'wrong' };

/** A typed count of throws for one day: empty is none planned, anything but a whole number from 1 to 200 is wrong. */
export function plannedCount(text: string): PlannedCount {
  if (text.trim() === '') return { kind: 'count', count: null };
  const count = typedNumber(text);
  return count !== null && Number.isInteger(count) && count >= 1 && count <= MOST_PLANNED ? { kind: 'count', count } : { kind: 'wrong' };
}
