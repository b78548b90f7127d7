import type { Athlete, CoachSays } from '../../core/facts/coach.ts';
import type { Fact, Said, Source } from '../../core/facts/fact.ts';
import type { MoundView } from '../../core/facts/views.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';

/** Invented athletes and throws, folded by the real folds: what a screen would get from a server. */

export const RIGHT_HANDER: Athlete = { id: 'mika-aldana', name: 'Mika Aldana', hand: 'right', birthYear: 2004, mainFastball: 'four-seam', units: 'imperial', language: 'en' };
export const LEFT_HANDER: Athlete = { id: 'teo-larrea', name: 'Teo Larrea', hand: 'left', birthYear: 2006, mainFastball: 'sinker', units: 'metric', language: 'es' };

/** Inches of induced vertical and arm-side break, and miles an hour. */
export type InventedThrow = readonly [verticalIn: number, armSideIn: number, mph: number];

const OPENED_AT_MS = 1_790_000_000_000;
const FULL_FLIGHT: Source = {
  device: 'invented-1', run: 'run-1', sight: 'full-flight', axis: 'measured', sequence: 1, time: 0,
  units: { distance: 'ft', speed: 'mph', movement: 'in' },
};

/** A mound whose log grows fact by fact. */
export class InventedMound {
  readonly facts: Fact[] = [];
  #ledger = emptyLedger('north-1');
  #hand: Athlete['hand'] = 'right';
  #source = FULL_FLIGHT;

  open(athlete: Athlete, session = `${athlete.id}-today`): this {
    this.#hand = athlete.hand;
    return this.say({ kind: 'session-opened', session, athlete, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.44, effort: 'full' });
  }

  spinOnly(): this {
    this.#source = { ...FULL_FLIGHT, sight: 'spin-only', axis: 'inferred' };
    return this;
  }

  say(says: CoachSays): this {
    return this.#append('coach', says);
  }

  throws(...thrown: readonly InventedThrow[]): this {
    for (const [verticalIn, armSideIn, mph] of thrown) {
      const source = { ...this.#source, sequence: this.facts.length + 1, time: this.facts.length * 1000 };
      this.#append('device:invented-1', {
        kind: 'throw-measured', source,
        body: {
          summary: { releaseSpeed: mph, verticalBreak: verticalIn, horizontalBreak: this.#hand === 'right' ? -armSideIn : armSideIn, flightTime: 55 / (mph * 1.4667 * 0.96), release: [this.#hand === 'right' ? -1.8 : 1.8, 54.5, 5.9] },
          spin: { rate: 1850, tilt: 60, efficiency: 0.93 },
        },
      });
    }
    return this;
  }

  view(): MoundView {
    return moundView(this.#ledger, null);
  }

  #append(by: string, said: Said): this {
    const fact: Fact = { place: this.facts.length + 1, mound: 'north-1', atMs: OPENED_AT_MS + this.facts.length * 21_000, by, version: 1, said };
    this.facts.push(fact);
    this.#ledger = foldFact(this.#ledger, fact);
    return this;
  }
}

export const FASTBALLS: readonly InventedThrow[] = [[16.2, 7.4, 94.1], [15.4, 8.2, 93.6], [16.9, 6.8, 94.8], [15.9, 7.9, 94.3], [16.4, 7.0, 93.9]];
/** Changeups of two trials: the second nearer to the zone. */
export const TRIAL_A: readonly InventedThrow[] = [[11.8, 9.1, 84.9], [10.2, 11.0, 84.1], [12.6, 8.2, 85.7], [9.4, 12.8, 83.6], [11.2, 10.3, 84.4]];
export const TRIAL_B: readonly InventedThrow[] = [[8.9, 13.6, 83.2], [7.2, 14.9, 82.8], [9.9, 11.8, 84.0], [6.1, 14.2, 82.1], [7.7, 15.6, 83.0], [6.8, 13.1, 82.4], [10.8, 10.4, 84.6]];
const SESSION = `${RIGHT_HANDER.id}-today`;

/** A session in full swing: a baseline, a zone, two trials, the last throw a miss. */
export function liveMound(athlete = RIGHT_HANDER, mound = new InventedMound()): InventedMound {
  const session = `${athlete.id}-today`;
  mound.open(athlete);
  mound.say({ kind: 'intent-set', session, intent: athlete.mainFastball }).throws(...FASTBALLS);
  mound.say({ kind: 'zone-set', session, zone: { kind: 'ellipse', verticalM: -0.235, armSideM: 0.165, verticalRadiusM: 0.065, armSideRadiusM: 0.06 }, speedBand: { lowMps: -5.4, highMps: -4.0 }, reason: null });
  mound.say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words: 'long fingers', focus: 'external' } }).throws(...TRIAL_A);
  mound.say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words: 'turn the doorknob late', focus: 'external' } }).throws(...TRIAL_B);
  return mound;
}

/** Three of the five fastballs that a baseline needs. */
export function formingMound(): InventedMound {
  return new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session: SESSION, intent: 'four-seam' }).throws(...FASTBALLS.slice(0, 3));
}

export function closedMound(): InventedMound {
  return liveMound().say({ kind: 'session-closed', session: SESSION });
}
