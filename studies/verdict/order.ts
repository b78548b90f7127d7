/** Who throws what, and on which day, in the order thrown. */
export interface Turn {
  readonly trial: 'a' | 'b';
  /** From 0. */
  readonly day: number;
}
export type Order = readonly Turn[];

const BLOCK = 5;

const block = (trial: Turn['trial'], count: number, day = 0): Turn[] => Array.from({ length: count }, () => ({ trial, day }));

/** All of A and then all of B. */
export const aThenB = (countA: number, countB: number): Order => [...block('a', countA), ...block('b', countB)];

/** Throws of B that an evening goes on to. */
export const MOST_B = 40;

/** An evening that finds A thrown: all of A and then B for as long as it goes. */
export const thenB = (countA: number): Order => aThenB(countA, MOST_B);

/** A B A B in blocks of five, as the tool leads the coach, until both have `count` throws. */
export const alternating = (count: number): Order =>
  Array.from({ length: count / BLOCK }, () => [...block('a', BLOCK), ...block('b', BLOCK)]).flat();

/** The throws of both shared out among days as evenly as they go, A first on each. */
export function overDays(days: number, countA: number, countB: number): Order {
  const share = (count: number, day: number): number => Math.floor(count / days) + (day < count % days ? 1 : 0);
  return Array.from({ length: days }, (_, day) => [...block('a', share(countA, day), day), ...block('b', share(countB, day), day)]).flat();
}
