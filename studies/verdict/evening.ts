import type { Claim, Judge } from './judge.ts';
import type { Order } from './order.ts';

/** A judge's first claim of an evening, and how many throws of B there were by then. */
export type FirstClaim = Claim & { readonly countB: number };

interface GrowingTally {
  count: number;
  mean: number;
  squares: number;
}

/**
 * Throws an evening and lets each judge look after every throw, from `fewest` of both trials on, until its first claim.
 * @param values one for each turn of the order
 */
export function firstClaims(order: Order, values: ArrayLike<number>, judges: readonly Judge[], fewest: number): (FirstClaim | null)[] {
  const days = emptyDays(order);
  const claims: (FirstClaim | null)[] = judges.map(() => null);
  const counts = { a: 0, b: 0 };
  for (let place = 0; place < order.length; place += 1) {
    const { trial, day } = order[place]!;
    add(days[day]![trial], values[place]!);
    counts[trial] += 1;
    if (counts.a < fewest || counts.b < fewest) continue;
    let waiting = false;
    for (let j = 0; j < judges.length; j += 1) {
      if (claims[j] !== null) continue;
      const claim = judges[j]!(days);
      if (claim === null) waiting = true;
      else claims[j] = { kind: claim.kind, difference: claim.difference, shrunken: claim.shrunken, countB: counts.b };
    }
    if (!waiting) break;
  }
  return claims;
}

/** The coach who looks at the last three throws of each when B has three, and keeps the grip whose mean miss is lower. */
export function glanceSaysBetter(order: Order, values: ArrayLike<number>): boolean {
  const thrown = { a: [] as number[], b: [] as number[] };
  for (let place = 0; thrown.b.length < 3; place += 1) thrown[order[place]!.trial].push(values[place]!);
  const sum = (three: readonly number[]): number => three[0]! + three[1]! + three[2]!;
  return sum(thrown.b) < sum(thrown.a.slice(-3));
}

function emptyDays(order: Order): { readonly a: GrowingTally; readonly b: GrowingTally }[] {
  const last = Math.max(...order.map(({ day }) => day));
  const empty = (): GrowingTally => ({ count: 0, mean: 0, squares: 0 });
  return Array.from({ length: last + 1 }, () => ({ a: empty(), b: empty() }));
}

/** Welford, Technometrics 4:419 (1962). */
function add(tally: GrowingTally, value: number): void {
  const from = value - tally.mean;
  tally.count += 1;
  tally.mean += from / tally.count;
  tally.squares += from * (value - tally.mean);
}
