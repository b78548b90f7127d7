import type { Cue, Grip } from '../../core/facts/coach.ts';
import type { Words } from '../words/words.ts';

/** A clock-free direction: so many degrees to arm or glove side, or what no angle is called. */
export function sideAngleWords(degrees: number, none: string, words: Words): string {
  const say = words.bench.trial;
  if (degrees === 0) return none;
  return degrees > 0 ? say.toArm(String(degrees)) : say.toGlove(String(-degrees));
}

/** A grip in one line; what is usual is left out. */
export function gripWords(grip: Grip | null, words: Words): string {
  const say = words.bench.trial;
  if (grip === null) return say.noGrip;
  const parts = [say.gripWords(say.seam[grip.seams], say.spreads[grip.spread])];
  if (grip.thumbDeg !== 0) parts.push(say.thumbWords(sideAngleWords(grip.thumbDeg, say.under, words)));
  if (grip.pressure !== 'even') parts.push(say.pressed[grip.pressure]);
  if (grip.depth !== 'normal') parts.push(say.held[grip.depth]);
  if (grip.tiltDeg !== 0) parts.push(say.tiltWords(sideAngleWords(grip.tiltDeg, say.straight, words)));
  return parts.join(', ');
}

/** Grip and cue together, as a trial is told from another. */
export function trialWords(trial: { readonly grip: Grip | null; readonly cue: Cue | null }, words: Words): string {
  const grip = gripWords(trial.grip, words);
  return trial.cue === null ? grip : `${grip}. ${words.bench.trial.cueSaid(trial.cue.words)}`;
}
