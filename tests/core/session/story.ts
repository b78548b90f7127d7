import type { ArmElsewhere } from '../../../core/facts/arm-says.ts';
import type { CoachSays } from '../../../core/facts/coach.ts';
import type { AthleteElsewhere } from '../../../core/facts/elsewhere-says.ts';
import type { Fact, Said, Source } from '../../../core/facts/fact.ts';
import type { ThrowBody } from '../../../core/facts/frames.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, sessionIn, type Ledger } from '../../../core/session/ledger.ts';
import { nextComparison } from '../../../core/session/planned.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';

/** A mound's log written by hand: each line is one fact a second after the last, on an invented device. */
export class Story {
  readonly facts: Fact[] = [];
  private sequence = 0;
  private waitedMs = 0;
  private readonly mound = 'north-1';

  say(says: CoachSays): this {
    return this.add(says, 'coach');
  }

  /** Nothing is said for so many hours. */
  later(hours: number): this {
    this.waitedMs += hours * 3_600_000;
    return this;
  }

  /** What the server tells this mound of others. */
  hear(said: ArmElsewhere | AthleteElsewhere): this {
    return this.add(said, 'server');
  }

  open(session: string, athlete: string, hand: 'right' | 'left' = 'right'): this {
    return this.say({
      kind: 'session-opened', session, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.4404, effort: 'full',
      athlete: { id: athlete, name: `Invented ${athlete}`, hand, birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' },
    });
  }

  intent(session: string, intent: 'four-seam' | 'changeup'): this {
    return this.say({ kind: 'intent-set', session, intent });
  }

  /** A summary throw: speed in mph, induced vertical break and break to the catcher's right in inches. Returns its place. */
  throw(speed: number, vertical: number, right: number): number {
    return this.measured(summary(speed, vertical, right));
  }

  /** A throw as the device sends it, in metres and m/s. Returns its place. */
  measured(body: ThrowBody, sight: Source['sight'] = 'full-flight'): number {
    return this.measuredBy(body, { sight });
  }

  /** The same from a device that declares something else of itself. */
  measuredBy(body: ThrowBody, declares: Partial<Source>): number {
    this.sequence += 1;
    this.add({ kind: 'throw-measured', source: { ...sourceOf(this.sequence), ...declares }, body }, 'device:lamp-1');
    return this.facts.length;
  }

  /** A fastball-like summary throw with more that a device may say of it. */
  throwWith(more: Pick<ThrowBody, 'armSpeed' | 'deliveryDuration' | 'extension'>): number {
    this.sequence += 1;
    this.add({ kind: 'throw-measured', source: sourceOf(this.sequence), body: { ...summary(88, 12, -8), ...more } }, 'device:lamp-1');
    return this.facts.length;
  }

  correct(sequence: number, body: ThrowBody): this {
    this.sequence += 1;
    return this.add({ kind: 'throw-corrected', source: sourceOf(this.sequence), corrects: { run: 'r1', sequence }, reason: null, body }, 'device:lamp-1');
  }

  ledger(): Ledger {
    return this.facts.reduce(foldFact, emptyLedger(this.mound));
  }

  private add(said: Said, by: string): this {
    const place = this.facts.length + 1;
    this.facts.push({ place, mound: this.mound, atMs: 1_790_000_000_000 + this.waitedMs + place * 1000, by, version: 1, said });
    return this;
  }
}

export function summary(speed: number, vertical: number, right: number): ThrowBody {
  return {
    summary: { releaseSpeed: mphToMps(speed), verticalBreak: inchesToM(vertical), horizontalBreak: inchesToM(right) },
    spin: { rate: 2200, tilt: 30, efficiency: 0.95 },
  };
}

function sourceOf(sequence: number): Source {
  return { device: 'lamp-1', run: 'r1', sequence, time: sequence, sight: 'full-flight', axis: 'measured', units: { distance: 'm', speed: 'm/s', movement: 'm' } };
}

export const ZONE = { kind: 'ellipse', verticalM: inchesToM(-8), armSideM: inchesToM(4), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) } as const;

/** Five fastballs of 90 mph, 16 in up and 6 in to a right-hander's arm side, each a little different. */
export function fiveFastballs(story: Story, side = -1): number[] {
  return [[90, 16, 6], [90.5, 16.5, 6.5], [89.5, 15.5, 5.5], [90.2, 16.2, 6.2], [89.8, 15.8, 5.8]].map(([speed, vertical, arm]) => story.throw(speed!, vertical!, side * arm!));
}

/** The comparisons of an athlete as a session of the story knows them, and the number that the next one gets. */
export function comparisonsIn(story: Story, session: string) {
  const { planned } = sessionIn(story.ledger(), session)!;
  return { nextK: nextComparison(planned), here: planned.comparisons, before: planned.comparisonsBefore };
}
