import type { Fact } from '../../core/facts/fact.ts';
import { DEFAULT_DISTANCE_M } from '../../core/facts/vocabulary.ts';
import { seeded } from '../core/flight/noise.ts';
import { FRAME_UNITS, flown, frameOf, type Chance, type Shape } from '../parity/flown.ts';

export const HISTORY_ATHLETE = 'mar';
const MOUNDS = ['north-1', 'south-1'] as const;
const DAY_MS = 86_400_000;
const DISTANCE_M = DEFAULT_DISTANCE_M.mound;
const ZONE = { kind: 'ellipse', verticalM: -0.2, armSideM: 0.1, verticalRadiusM: 0.08, armSideRadiusM: 0.08 } as const;
const BLOCK = 5;
const COMPARED_EVERY = 10;

/** The logs of two mounds on which one athlete has thrown, in turn, a session every third day: fastballs, then two trials in blocks. */
export function longHistory(sessions: number, throws: number, shape: Shape = 'path'): ReadonlyMap<string, readonly Fact[]> {
  const chance = seeded(2027);
  const logs = new Map<string, Fact[]>(MOUNDS.map((mound) => [mound, []]));
  for (let index = 0; index < sessions; index += 1) {
    const mound = MOUNDS[index % MOUNDS.length]!;
    addSession(logs.get(mound)!, { mound, session: `session-${index + 1}`, k: index % COMPARED_EVERY === 0 ? index / COMPARED_EVERY + 1 : null, baseline: Math.floor(index / MOUNDS.length) + 1, startMs: 1_700_000_000_000 + 3 * index * DAY_MS, throws, shape, chance });
  }
  return logs;
}

interface Sitting {
  readonly mound: string;
  readonly session: string;
  /** Of the comparison that is opened there; null for none. */
  readonly k: number | null;
  readonly baseline: number;
  readonly startMs: number;
  readonly throws: number;
  readonly shape: Shape;
  readonly chance: Chance;
}

function addSession(log: Fact[], { mound, session, k, baseline, startMs, throws, shape, chance }: Sitting): void {
  let steps = 0;
  const say = (said: Fact['said'], by = 'coach'): void => {
    steps += 1;
    log.push({ place: log.length + 1, mound, atMs: startMs + steps * 8_000, by, version: 1, said });
  };
  const throwOne = (intent: 'four-seam' | 'changeup'): void => {
    const body = frameOf(flown(intent, 'right', DISTANCE_M, chance), shape, chance);
    say({ kind: 'throw-measured', source: { device: `eye-${mound}`, run: session, sight: 'full-flight', axis: 'measured', units: FRAME_UNITS, sequence: steps, time: steps * 8_000 }, body }, `device:eye-${mound}`);
  };
  say({
    kind: 'session-opened', session, timeZone: 'America/Chicago', stage: 'mound', distanceM: DISTANCE_M, effort: 'full',
    athlete: { id: HISTORY_ATHLETE, name: 'Mar Okonedo', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' },
  });
  say({ kind: 'intent-set', session, intent: 'four-seam' });
  for (let count = 0; count < 2 * BLOCK; count += 1) throwOne('four-seam');
  say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null });
  for (const words of ['through', 'over']) say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
  if (k !== null) say({ kind: 'comparison-opened', session, k, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline });
  for (let count = 2 * BLOCK; count < throws; count += 1) {
    if (count % BLOCK === 0) say({ kind: 'trial-resumed', session, trial: (count / BLOCK) % 2 === 0 ? 'A' : 'B' });
    throwOne('changeup');
  }
  say({ kind: 'session-closed', session });
}
