import type { NextBlock } from '../facts/advice-view.ts';
import type { MayThrow } from '../facts/care-view.ts';

/** Throws of one trial before the other comes. House rule: alternating blocks keep drift out of a comparison. */
const BLOCK_SIZE = 5;

/**
 * The next block of A B A B. It takes an arm that may still throw, so it cannot be asked for after pain; it never goes
 * beyond what is left of the day and of the planned bullpen, and is null when that is nothing.
 * @param thrown the trial of each throw of the two, in the order thrown; other throws in between are left out
 */
export function nextBlock(care: MayThrow, thrown: readonly string[], [first, second]: readonly [string, string]): NextBlock | null {
  if (care.left === 0) return null;
  const last = thrown.at(-1);
  if (last === undefined) return { trial: first, throws: Math.min(BLOCK_SIZE, care.left), goesOn: false };
  const run = thrown.length - 1 - thrown.findLastIndex((trial) => trial !== last);
  const goesOn = run < BLOCK_SIZE;
  const trial = goesOn ? last : last === first ? second : first;
  return { trial, throws: Math.min(goesOn ? BLOCK_SIZE - run : BLOCK_SIZE, care.left), goesOn };
}

/**
 * Whether all of one trial were thrown before all of the other: then grip and time are mixed, and tiring or warming up
 * looks like a grip. False while one of the two has not been thrown.
 */
export function gripAndTimeMixed(thrown: readonly string[]): boolean {
  const changes = thrown.filter((trial, index) => index > 0 && trial !== thrown[index - 1]).length;
  return changes === 1;
}
