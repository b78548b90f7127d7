import type { SpeedBand } from '../../core/facts/coach.ts';
import { numberText, speedIn, SPEED_UNIT } from './numbers.ts';
import type { Speech } from './speech.ts';
import { sideWords, verticalWords } from './throw-words.ts';

/** "10 in down, 8 in arm side": where the middle of a zone lies. */
export function centreWords({ verticalM, armSideM }: { readonly verticalM: number; readonly armSideM: number }, speech: Speech): string {
  return `${verticalWords(verticalM, speech)}, ${sideWords(armSideM, speech)}`;
}

/** "7 to 12 mph slower"; an end that lies above the fastball's own speed has a minus. */
export function slowerWords({ lowMps, highMps }: SpeedBand, { words: { trade }, units, language }: Speech): string {
  const bare = (mps: number): string => numberText(speedIn(units, -mps), 0, language);
  return trade.slowerBy(bare(highMps), `${bare(lowMps)} ${SPEED_UNIT[units]}`);
}

/** The same, or that no pace is asked for. */
export function bandWords(band: SpeedBand | null, speech: Speech): string {
  return band === null ? speech.words.plan.target.noPace : slowerWords(band, speech);
}
