import type { DeviceSays, Source } from '../../core/facts/fact.ts';
import type { Athlete, CoachSays } from '../../core/facts/coach.ts';
import type { Hello, ThrowBody } from '../../core/facts/frames.ts';

/** Invented frames and statements for tests of the server. */
export function summary(releaseSpeed = 84.5, more: Partial<NonNullable<ThrowBody['summary']>> = {}): ThrowBody {
  return { summary: { releaseSpeed, verticalBreak: 6, horizontalBreak: 12, ...more } };
}

/** A straight, slowing path of 60 samples from 16.5 m, in metres and seconds. */
export function path(): ThrowBody {
  return {
    path: Array.from({ length: 60 }, (_, index): [number, number, number, number] => {
      const t = index * 0.0075;
      return [t, -0.5 + 0.9 * t, 16.5 - 38 * t + 1.8 * t * t, 1.8 - 0.4 * t - 3.4 * t * t];
    }),
  };
}

const SOURCE: Source = {
  device: 'eye-1', run: 'run-a', sight: 'full-flight', axis: 'none',
  units: { distance: 'm', speed: 'mph', movement: 'in' }, sequence: 1, time: 1000,
};

export function measured(sequence: number, body: ThrowBody = summary(), source: Partial<Source> = {}): DeviceSays {
  return { kind: 'throw-measured', source: { ...SOURCE, ...source, sequence }, body };
}

export function corrected(sequence: number, original: number, body: ThrowBody = summary(80), source: Partial<Source> = {}): DeviceSays {
  const whole = { ...SOURCE, ...source, sequence };
  return { kind: 'throw-corrected', source: whole, corrects: { run: whole.run, sequence: original }, reason: null, body };
}

export function hello(token: string, more: Partial<Hello> = {}): Hello {
  return {
    kind: 'hello', protocol: 1, device: 'eye-1', run: 'run-a', mound: 'north-1', token, sight: 'full-flight', axis: 'none',
    units: { distance: 'm', speed: 'mph', movement: 'in' }, ...more,
  };
}

export const ATHLETE: Athlete = {
  id: 'ana-1', name: 'Ana Ibarra', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en',
};

export function opened(session = 's-1', more: Partial<Extract<CoachSays, { kind: 'session-opened' }>> = {}): CoachSays {
  return { kind: 'session-opened', session, athlete: ATHLETE, timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.4404, effort: 'full', ...more };
}
