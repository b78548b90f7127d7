/** What the coach wants next: the fastball, or trial A (0) or B (1). */
export type Wanted = { readonly kind: 'fastball' } | { readonly kind: 'trial'; readonly index: 0 | 1 };

const FASTBALL: Wanted = { kind: 'fastball' };
/** One more than the five of a baseline. */
export const WARM_UP_THROWS = 6;
const BLOCKS = 8;
const BLOCK_THROWS = 5;
const FASTBALLS_BETWEEN = 2;

/** A sensible bullpen of 60: six fastballs, then changeups in blocks of five, A and B in turn, with two fastballs in between. */
export function bullpen(): Wanted[] {
  const blocks = Array.from({ length: BLOCKS }, (_, block) => {
    const trial: Wanted = { kind: 'trial', index: block % 2 === 0 ? 0 : 1 };
    const between = block === BLOCKS - 1 ? 0 : FASTBALLS_BETWEEN;
    return [...repeat(trial, BLOCK_THROWS), ...repeat(FASTBALL, between)];
  });
  return [...repeat(FASTBALL, WARM_UP_THROWS), ...blocks.flat()];
}

function repeat(wanted: Wanted, times: number): Wanted[] {
  return Array.from({ length: times }, () => wanted);
}
