import { createChosenHere } from '../../chosen-here.ts';
import { settingsIn, SIDES } from '../../settings.ts';

const chosen = createChosenHere('hand', SIDES, settingsIn(location.search).hand);

/** The hand whose thumb taps: what it reaches lies at its side of the screen. */
export const hand = () => chosen.chosen() ?? 'right';
export const chooseHand = chosen.choose;
