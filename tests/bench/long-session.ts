import type { Fact } from '../../core/facts/fact.ts';
import { DEFAULT_DISTANCE_M } from '../../core/facts/vocabulary.ts';
import { seeded } from '../core/flight/noise.ts';
import { FRAME_UNITS, flown, frameOf, type Shape } from '../parity/flown.ts';

export const MOUND = 'north-1';
export const SESSION = 'session-1';
/** Facts before the first throw is called. */
export const OPENING = 3;
const ZONE = { kind: 'ellipse', verticalM: -0.2, armSideM: 0.1, verticalRadiusM: 0.08, armSideRadiusM: 0.08 } as const;

/** A long session with a target and one trial: fastball and changeup in turn, each called before it is thrown. */
export function longSession(throws: number, shape: Shape = 'path'): Fact[] {
  const chance = seeded(2026);
  const distanceM = DEFAULT_DISTANCE_M.mound;
  const facts: Fact[] = [];
  const say = (said: Fact['said']): void => {
    const place = facts.length + 1;
    facts.push({ place, mound: MOUND, atMs: 1_790_000_000_000 + place * 8_000, by: 'bench', version: 1, said });
  };
  say({
    kind: 'session-opened', session: SESSION, timeZone: 'America/Chicago', stage: 'mound', distanceM, effort: 'full',
    athlete: { id: 'mar', name: 'Mar Okonedo', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' },
  });
  say({ kind: 'zone-set', session: SESSION, zone: ZONE, speedBand: null, reason: null });
  say({ kind: 'trial-begun', session: SESSION, intent: 'changeup', grip: null, cue: { words: 'through', focus: 'external' } });
  for (let sequence = 1; sequence <= throws; sequence += 1) {
    const intent = sequence % 2 === 1 ? 'four-seam' : 'changeup';
    say({ kind: 'intent-set', session: SESSION, intent });
    const body = frameOf(flown(intent, 'right', distanceM, chance), shape, chance);
    say({ kind: 'throw-measured', source: { device: 'eye', run: 'a', sight: 'full-flight', axis: 'measured', units: FRAME_UNITS, sequence, time: sequence * 8_000 }, body });
  }
  return facts;
}
