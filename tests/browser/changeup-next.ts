import type { Athlete } from '../../core/facts/coach.ts';
import { inchesToM } from '../../core/units/convert.ts';
import { CIRCLE, easyFrame, FASTBALL } from './by-hand.ts';
import { ATHLETE, opening, type TestCoach } from './coach.ts';
import { counted, type CountedThrows, type TestDevice } from './device.ts';

interface Sitting {
  readonly session?: string;
  readonly athlete?: Athlete;
  readonly speedBand?: typeof BAND | null;
}

/** Slower by 100 to 200 inches a second: 5.7 to 11.4 mph. */
export const BAND = { lowMps: -inchesToM(200), highMps: -inchesToM(100) } as const;

/** Opened, intent, five fastballs and a target: eight facts. */
export async function targetIsSet(coach: TestCoach, throws: CountedThrows, { session = 's1', athlete = ATHLETE, speedBand = null }: Sitting = {}): Promise<void> {
  await coach.say(opening(session, athlete));
  await coach.say({ kind: 'intent-set', session, intent: 'four-seam' });
  await throws(easyFrame(FASTBALL), 5);
  await coach.say({ kind: 'zone-set', session, zone: CIRCLE, speedBand, reason: null });
}

/** With a trial begun as the ninth fact everything is there that a changeup is judged by. It will be throw 6, at place 10. */
export async function changeupIsNext(coach: TestCoach, device: TestDevice, sitting: Sitting = {}): Promise<void> {
  await targetIsSet(coach, counted(device), sitting);
  await coach.say({ kind: 'trial-begun', session: sitting.session ?? 's1', intent: 'changeup', grip: null, cue: null });
}
