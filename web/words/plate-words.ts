import { isNothing, movementIn, movementText } from './numbers.ts';
import type { Speech } from './speech.ts';

/** "31 in high": over the ground, at the front of the plate. */
export function plateHeightWords(heightM: number, speech: Speech, decimals = 0): string {
  return speech.words.asked.plate.high(movementText(heightM, speech, decimals));
}

/** "4 in arm side" of the middle of the plate, or "in the middle". */
export function plateSideWords(armSideM: number, speech: Speech, decimals = 0): string {
  const { asked: { plate }, measures } = speech.words;
  if (isNothing(movementIn(speech.units, armSideM), decimals)) return plate.middle;
  const amount = movementText(Math.abs(armSideM), speech, decimals);
  return armSideM > 0 ? measures.armSide(amount) : measures.gloveSide(amount);
}
