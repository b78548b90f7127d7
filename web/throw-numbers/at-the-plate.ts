import type { Reading, ThrowView } from '../../core/facts/views.ts';
import type { Hand } from '../../core/facts/vocabulary.ts';
import { speedText } from '../words/numbers.ts';
import { plateHeightWords } from '../words/plate-words.ts';
import type { Speech } from '../words/speech.ts';
import { angleText, moveText, toSide } from './amounts.ts';
import { errorOf, numberRow, seenBy, type NumberRow } from './number-row.ts';

/** Where, how fast and at which angles the ball came through the front of the plate. */
export function plateRows(thrown: ThrowView, hand: Hand, speech: Speech): NumberRow[] {
  const { throwNumbers: say } = speech.words;
  const seen = seenBy(thrown, speech);
  const angle = (rad: number): string => angleText(rad, speech);
  const move = (metres: number): string => moveText(metres, speech);
  const falls = (rad: number): string => (rad < 0 ? say.falling(angle(-rad)) : say.rising(angle(rad)));
  return [
    numberRow('plateHeight', thrown.plateHeightM, (metres) => plateHeightWords(metres, speech, 1), [seen, errorOf(thrown, 'plateHeightM', speech)], speech),
    numberRow('plateSide', towardsArm(thrown.plateRightM, hand), (metres) => toSide(metres, move, speech), [seen, errorOf(thrown, 'plateRightM', speech)], speech),
    numberRow('plateSpeed', thrown.plateSpeedMps, (mps) => speedText(mps, speech), [seen, errorOf(thrown, 'plateSpeedMps', speech)], speech),
    numberRow('verticalApproach', thrown.verticalApproachRad, falls, [seen, errorOf(thrown, 'verticalApproachRad', speech)], speech),
    numberRow('horizontalApproach', thrown.horizontalApproachRad, (rad) => toSide(rad, angle, speech), [seen, errorOf(thrown, 'horizontalApproachRad', speech)], speech),
  ];
}

/** The view has the plate place as the catcher sees it; a coach reads it by the arm. */
function towardsArm(right: Reading, hand: Hand): Reading {
  return typeof right !== 'number' || hand === 'left' ? right : -right;
}
