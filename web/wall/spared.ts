/**
 * What keeps a picture that hangs all day from burning into its panel: where it lies is shifted by so little that nobody sees it,
 * round and round a small square, so that no edge stands on the same dots for long.
 *
 * House rule: eight steps to a side, a step every half minute, a step of a thousandth of the screen's width. A lap takes sixteen
 * minutes and stays inside the margin round the picture.
 */
const STEPS_A_SIDE = 8;
const STEP_SHARE = 0.001;
export const STEP_EVERY_MS = 30_000;

/** Where the picture lies at a step, in shares of the screen's width from its own place. */
export function shiftAt(step: number): { readonly right: number; readonly down: number } {
  const along = step % STEPS_A_SIDE;
  const corner = STEPS_A_SIDE / 2;
  switch (Math.floor(step / STEPS_A_SIDE) % 4) {
    case 0: return shares(along - corner, -corner);
    case 1: return shares(corner, along - corner);
    case 2: return shares(corner - along, corner);
    default: return shares(-corner, corner - along);
  }
}

function shares(right: number, down: number): { readonly right: number; readonly down: number } {
  return { right: right * STEP_SHARE, down: down * STEP_SHARE };
}
