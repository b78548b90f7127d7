import type { ThrowView } from '../../core/facts/views.ts';
import { numberText, shareText, spinText, tiltText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { angleText } from './amounts.ts';
import { numberRow, wordRow, type NumberRow } from './number-row.ts';

/** How the ball turned. */
export function spinRows(thrown: ThrowView, speech: Speech): NumberRow[] {
  const { throwNumbers: say } = speech.words;
  const how = thrown.spinFrom === null ? null : say.rests[`spin-${thrown.spinFrom}`];
  return [
    numberRow('spinRate', thrown.spinRpm, (rpm) => spinText(rpm, speech), [say.rests.device], speech),
    numberRow('tilt', thrown.tiltRad, tiltText, [how], speech),
    numberRow('efficiency', thrown.efficiency, (share) => shareText(share, speech), [how], speech),
    gyroRow(thrown, how, speech),
    seamsRow(thrown, speech),
  ];
}

/** Where only the efficiency is known, so is the size of the angle, but not which way it turns. */
function gyroRow({ gyroRad, efficiency }: ThrowView, how: string | null, speech: Speech): NumberRow {
  const { throwNumbers: say } = speech.words;
  const angle = (rad: number): string => angleText(Math.abs(rad), speech, 0);
  const row = numberRow('gyro', gyroRad, (rad) => (rad < 0 ? say.counter(angle(rad)) : say.clockwise(angle(rad))), [how], speech);
  return row.known || typeof efficiency !== 'number' ? row : { ...row, rests: [say.eitherWay(angle(Math.acos(efficiency)))] };
}

function seamsRow({ seamAxis }: ThrowView, speech: Speech): NumberRow {
  const { throwNumbers: say, measures } = speech.words;
  if (seamAxis === null) return wordRow('seams', measures.missing['not-sent'], false, [], speech);
  const degrees = (value: number): string => say.degrees(numberText(value, 0, speech.language));
  return wordRow('seams', say.latitude(degrees(seamAxis.latitudeDeg), degrees(seamAxis.longitudeDeg)), true, [say.rests.device], speech);
}
