import { SEAM_FEWEST_THROWS, seamBoundM, seamEffect, type SeamBound } from '../coaching/seam-effect.ts';
import { errorsToSi } from '../facts/si.ts';
import type { HiddenBecause, SeamEffectView, UnexplainedReading } from '../facts/views.ts';
import { degToRad, inchesToM } from '../units/convert.ts';
import { knownWind } from './air-of.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';

/** How far a measured axis may lie beside the true one on every throw, where the device does not say. House rule. */
const AXIS_BIAS_RAD = degToRad(3);
/** A wind that was said is flown with; it is believed to half a metre a second, which is half an inch. House rule. */
const KNOWN_WIND_SHIFT_M = inchesToM(0.5);

/** Whether the seams push the throws of one trial in the present stage; excluded throws have no say. */
export function seamEffectView(entries: readonly ThrowEntry[], session: SessionEntry, letter: string): SeamEffectView {
  const thrown = entries.flatMap((entry) => (countsFor(entry, session, letter) ? [{ entry, unexplained: analysisOf(entry, session).unexplained }] : []));
  const clean = thrown.flatMap(({ entry, unexplained }) => cleanOf(entry, unexplained) ?? []);
  // Before its first throw a trial is seen by whatever saw the session's last one.
  const judged = thrown.length > 0 ? thrown.map(({ unexplained }) => unexplained) : entries.slice(-1).map((entry) => analysisOf(entry, session).unexplained);
  const hidden = hiddenOf(judged);
  if (clean.length === 0 && hidden !== null) return { kind: 'not-visible', reason: hidden };
  const boundM = clean.reduce((sum, one) => sum + one.boundM / clean.length, 0);
  const effect = seamEffect(clean.map(({ acrossM }) => acrossM), boundM);
  if (effect.kind === 'too-few') return { kind: 'too-few', count: effect.count, need: Math.max(SEAM_FEWEST_THROWS, effect.count + 1) };
  const { intervalM: [lowM, highM], ...said } = effect;
  return { ...said, lowM, highM };
}

function countsFor(entry: ThrowEntry, { id, stage, athlete }: SessionEntry, letter: string): boolean {
  const tags = entry.tags[id];
  return tags !== undefined && tags.trial === letter && tags.stage === stage && tags.excluded === null && tags.intent !== athlete.mainFastball;
}

/** The mean of what acts on each throw alike bounds what acts on their mean. */
function cleanOf({ source, air }: ThrowEntry, unexplained: UnexplainedReading): { readonly acrossM: number; readonly boundM: number } | null {
  if (unexplained.kind !== 'unexplained') return null;
  const { acrossM, pushM } = unexplained;
  if (acrossM === null || pushM === null) return null;
  const { axisBiasRad } = errorsToSi(source.standardErrors ?? {}, source.units);
  return { acrossM, boundM: seamBoundM({ axisBiasRad: axisBiasRad ?? AXIS_BIAS_RAD, movementM: pushM, wind: windOver(air) }) };
}

/** Where nobody said, a bullpen is taken to lie outdoors. */
function windOver(air: ThrowEntry['air']): SeamBound['wind'] {
  if (air === null) return 'outdoors';
  if (knownWind(air) !== null) return { shiftM: KNOWN_WIND_SHIFT_M };
  return air.where;
}

function hiddenOf(readings: readonly UnexplainedReading[]): HiddenBecause | null {
  return readings.flatMap((reading) => (reading.kind === 'not-visible' ? [reading.reason] : [])).at(-1) ?? null;
}
