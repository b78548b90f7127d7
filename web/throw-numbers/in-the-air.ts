import type { ThrowView, UnexplainedView } from '../../core/facts/views.ts';
import { ASSUMED_EXTENSION_M } from '../../core/session/flight-of.ts';
import { speedText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { lengthErrorText, moveText, placeText, timeText, toHeight, toSide } from './amounts.ts';
import { errorOf, numberRow, seenBy, wordRow, type NumberRow } from './number-row.ts';

/** From where and how fast the ball left the hand. */
export function releaseRows(thrown: ThrowView, speech: Speech): NumberRow[] {
  const say = speech.words.throwNumbers;
  const seen = seenBy(thrown, speech);
  const place = (metres: number): string => placeText(metres, speech);
  const extension = numberRow('extension', thrown.extensionM, place, [say.rests.device], speech);
  return [
    numberRow('speed', thrown.speedMps, (mps) => speedText(mps, speech), [seen, errorOf(thrown, 'speedMps', speech)], speech),
    extension.known ? extension : { ...extension, rests: [say.assumedExtension(place(ASSUMED_EXTENSION_M))] },
    numberRow('releaseHeight', thrown.releaseHeightM, place, [seen, errorOf(thrown, 'releaseHeightM', speech)], speech),
    numberRow('releaseSide', thrown.releaseArmSideM, (metres) => toSide(metres, place, speech), [seen, errorOf(thrown, 'releaseArmSideM', speech)], speech),
  ];
}

/** What the ball did on its way, and how much of it the spin explains. */
export function flightRows(thrown: ThrowView, speech: Speech): NumberRow[] {
  const say = speech.words.throwNumbers;
  const moved = thrown.inferred ? say.rests.inferred : seenBy(thrown, speech);
  const move = (metres: number): string => moveText(metres, speech);
  return [
    numberRow('flightTime', thrown.flightTimeS, (seconds) => timeText(seconds, speech), [thrown.flightTimeFrom && say.rests[thrown.flightTimeFrom], errorOf(thrown, 'flightTimeS', speech)], speech),
    numberRow('vertical', thrown.verticalM, (metres) => toHeight(metres, move, speech), [moved, errorOf(thrown, 'verticalM', speech)], speech),
    numberRow('horizontal', thrown.armSideM, (metres) => toSide(metres, move, speech), [moved, errorOf(thrown, 'armSideM', speech)], speech),
    ...unexplainedRows(thrown, speech),
  ];
}

/** Three numbers where they can be seen; else one that says why not. */
function unexplainedRows({ unexplained }: ThrowView, speech: Speech): NumberRow[] {
  const { measures: { missing }, throwNumbers: say, asked: { seamMap } } = speech.words;
  if (unexplained.kind === 'not-visible') return [wordRow('unexplained', missing['not-visible'], false, [seamMap.hiddenBecause[unexplained.reason]], speech)];
  if (unexplained.kind !== 'unexplained') return [wordRow('unexplained', missing[unexplained.kind], false, [], speech)];
  const both = (verticalM: number, armSideM: number): string => `${toHeight(verticalM, move, speech)}, ${toSide(armSideM, move, speech)}`;
  const move = (metres: number): string => moveText(metres, speech);
  const { verticalM, armSideM, spinVerticalM, spinArmSideM, acrossM } = unexplained;
  return [
    wordRow('spinExplained', both(spinVerticalM, spinArmSideM), true, [say.rests['spin-measured']], speech),
    wordRow('unexplained', both(verticalM, armSideM), true, [partsOf(unexplained, speech)], speech),
    wordRow('across', acrossM === null ? say.littlePush : move(acrossM), acrossM !== null, [], speech),
  ];
}

/** The two parts of its standard error, each up and down and then sideways. */
function partsOf({ measurement, model }: UnexplainedView, speech: Speech): string {
  const say = speech.words.throwNumbers;
  const both = ([vertical, , side]: UnexplainedView['model']): string => say.both(lengthErrorText(Math.sqrt(vertical), speech), lengthErrorText(Math.sqrt(side), speech));
  return measurement === null ? say.errorUnknown(both(model)) : say.errorParts(both(measurement), both(model));
}
