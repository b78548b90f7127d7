import type { ThrowGuess } from '../../core/facts/feedback-says.ts';
import type { Hand } from '../../core/facts/vocabulary.ts';
import type { Words } from '../words/words.ts';
import { capital } from '../words/sentence.ts';

export type Went = NonNullable<ThrowGuess['went']>;
export type Moved = NonNullable<ThrowGuess['moved']>;

/** The nine places where a throw can be said to have gone, row by row from the top, seen from the mound: a right-hander's arm side lies to the right. */
export function wentCells(hand: Hand): Went[] {
  return (['up', 'middle', 'down'] as const).flatMap((height) => across(hand, 'middle').map((side): Went => ({ height, side })));
}

/** The nine ways a throw can be said to have moved against the target zone, laid out in the same way. */
export function movedCells(hand: Hand): Moved[] {
  return (['above', 'on-target', 'below'] as const).flatMap((vertical) => across(hand, 'on-target').map((side): Moved => ({ vertical, side })));
}

function across<Middle extends string>(hand: Hand, middle: Middle): ('arm-side' | 'glove-side' | Middle)[] {
  return hand === 'right' ? ['glove-side', middle, 'arm-side'] : ['arm-side', middle, 'glove-side'];
}

/** What the athlete said of a throw, for comparison with what was measured; null where nothing was said. */
export function guessWords(guess: ThrowGuess | null, words: Words): string | null {
  const said = [
    ...(guess === null || guess.went === null ? [] : [wentWords(guess.went, words)]),
    ...(guess === null || guess.moved === null ? [] : [movedWords(guess.moved, words)]),
  ];
  return said.length === 0 ? null : words.glance.youSaid(said.join('; ').toLowerCase());
}

/** "High, arm side". */
export function wentWords({ height, side }: Went, { glance }: Words): string {
  return side === 'middle' ? glance.went[height] : `${glance.went[height]}, ${glance.side[side]}`;
}

/** "Below, glove side"; beside the zone at its height only the side is said. */
export function movedWords({ vertical, side }: Moved, { glance }: Words): string {
  if (side === 'on-target') return glance.moved[vertical];
  const said = glance.side[side];
  return vertical === 'on-target' ? capital(said) : `${glance.moved[vertical]}, ${said}`;
}
