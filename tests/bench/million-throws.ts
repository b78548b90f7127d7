import type { Fact } from '../../core/facts/fact.ts';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { DEFAULT_DISTANCE_M } from '../../core/facts/vocabulary.ts';
import { seeded } from '../core/flight/noise.ts';
import { FRAME_UNITS, flown, frameOf, type Chance } from '../parity/flown.ts';

const DISTANCE_M = DEFAULT_DISTANCE_M.mound;
const ZONE = { kind: 'ellipse', verticalM: -0.2, armSideM: 0.1, verticalRadiusM: 0.08, armSideRadiusM: 0.08 } as const;
const BLOCK = 5;
const FASTBALLS = 10;
/** Flying each throw would take longer than all the rest: these are thrown over and over. */
const DIFFERENT_THROWS = 500;
const FIRST_MS = 1_600_000_000_000;
const APART_MS = 3_600_000;
const BETWEEN_THROWS_MS = 20_000;

export interface Years {
  readonly mounds: number;
  readonly athletesOfMound: number;
  readonly sessionsOfMound: number;
  readonly throwsOfSession: number;
}

type Shelf = Readonly<Record<'four-seam' | 'changeup', readonly ThrowBody[]>>;

/** The logs of an academy that has thrown for years, mound by mound. */
export function* logsOfYears(years: Years): Iterable<readonly [mound: string, facts: Iterable<Pick<Fact, 'by' | 'said' | 'atMs'>>]> {
  const chance = seeded(2031);
  const shelf: Shelf = { 'four-seam': thrownOnce('four-seam', chance), changeup: thrownOnce('changeup', chance) };
  for (let number = 1; number <= years.mounds; number += 1) yield [`north-${number}`, yearsOn(`north-${number}`, years, shelf, chance)];
}

function thrownOnce(intent: 'four-seam' | 'changeup', chance: Chance): ThrowBody[] {
  return Array.from({ length: DIFFERENT_THROWS }, () => frameOf(flown(intent, 'right', DISTANCE_M, chance), 'summary', chance));
}

/** A session of one athlete after the other: fastballs, then two trials in blocks. */
function* yearsOn(mound: string, { athletesOfMound, sessionsOfMound, throwsOfSession }: Years, shelf: Shelf, chance: Chance): Iterable<Pick<Fact, 'by' | 'said' | 'atMs'>> {
  for (let index = 0; index < sessionsOfMound; index += 1) {
    const athlete = `${mound}-athlete-${(index % athletesOfMound) + 1}`;
    const session = `${mound}-session-${index + 1}`;
    let atMs = FIRST_MS + index * APART_MS;
    let sequence = 0;
    const say = (said: Fact['said']) => ({ by: 'coach', said, atMs });
    const thrown = (intent: 'four-seam' | 'changeup') => {
      atMs += BETWEEN_THROWS_MS;
      sequence += 1;
      const body = shelf[intent][Math.floor(chance.uniform() * DIFFERENT_THROWS)]!;
      return { by: `device:eye-${mound}`, atMs, said: { kind: 'throw-measured', source: { device: `eye-${mound}`, run: session, sight: 'full-flight', axis: 'measured', units: FRAME_UNITS, sequence, time: atMs }, body } as const };
    };
    yield say({
      kind: 'session-opened', session, timeZone: 'America/Chicago', stage: 'mound', distanceM: DISTANCE_M, effort: 'full',
      athlete: { id: athlete, name: `Athlete ${athlete}`, hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' },
    });
    yield say({ kind: 'intent-set', session, intent: 'four-seam' });
    for (let count = 0; count < FASTBALLS; count += 1) yield thrown('four-seam');
    yield say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null });
    for (const words of ['through', 'over']) yield say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
    for (let count = FASTBALLS; count < throwsOfSession; count += 1) {
      if (count % BLOCK === 0) yield say({ kind: 'trial-resumed', session, trial: (count / BLOCK) % 2 === 0 ? 'A' : 'B' });
      yield thrown('changeup');
    }
    yield say({ kind: 'session-closed', session });
  }
}
