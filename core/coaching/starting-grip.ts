import type { Grip } from '../facts/coach.ts';
import type { Family, Intent } from '../facts/vocabulary.ts';

/** Nobody's first changeup needs a clever grip: begin with two-seam, everything else as usual. Trade knowledge. */
export const PLAIN_GRIP: Grip = { seams: 'two-seam', spread: 'normal', thumbDeg: 0, pressure: 'even', depth: 'normal', tiltDeg: 0 };

/** Where the trials of a family begin. It is changed when it is uncomfortable or the numbers say so. */
export const STARTING_GRIP: Readonly<Record<Family, Grip>> = {
  turnover: PLAIN_GRIP,
  'seam-effect': PLAIN_GRIP,
  // What makes a split is the ball between the fingers; all else stays as usual.
  split: { ...PLAIN_GRIP, spread: 'split', depth: 'deep' },
};

/** What the throws of a family are meant as. */
export const FAMILY_INTENT: Readonly<Record<Family, Intent>> = { turnover: 'changeup', 'seam-effect': 'changeup', split: 'split' };
