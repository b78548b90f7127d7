import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { inchesToM } from '../../core/units/convert.ts';
import { systemClock } from '../../server/clock.ts';
import { startServer as startHere } from '../../server/serve.ts';
import { CIRCLE, easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { connectCoach, opening, type TestCoach } from './coach.ts';
import { connectDevice, type TestDevice } from './device.ts';

export const [ON_TARGET, SHORT] = WORKED_THROWS.map(easyFrame) as [ThrowBody, ThrowBody];
export const FAST: ThrowBody = easyFrame(FASTBALL);
const HOURS_AGO = 30;

/** Writes a bullpen of 30 hours ago into a data folder: two cues in blocks, the second on target, and closes it. */
export async function practisedBefore(dataFolder: string): Promise<void> {
  const clock = { ...systemClock, nowMs: () => systemClock.nowMs() - HOURS_AGO * 3_600_000 };
  const server = await startHere({ port: 0, host: '127.0.0.1', dataFolder, webFolder: path.join(dataFolder, 'none'), clock, logLevel: 'silent' });
  const coach = await connectCoach(server, 'north-1');
  const device = await connectDevice({ address: server.address, token: readFileSync(server.tokenFile, 'utf8').trim() });
  let sequence = 0;
  const throwAll = async (body: ThrowBody, count: number): Promise<void> => {
    for (let thrown = 0; thrown < count; thrown += 1) await device.throws((sequence += 1), body);
  };
  await withFastballs('before', coach, () => throwAll(FAST, 5));
  await coach.say(cue('before', 'Turn the doorknob'));
  await throwAll(SHORT, 5);
  await coach.say(cue('before', 'Through the glove'));
  await throwAll(ON_TARGET, 5);
  await coach.say({ kind: 'trial-resumed', session: 'before', trial: 'A' });
  await throwAll(SHORT, 4);
  await coach.say({ kind: 'trial-resumed', session: 'before', trial: 'B' });
  await throwAll(ON_TARGET, 4);
  await coach.say({ kind: 'session-closed', session: 'before' });
  coach.close();
  await device.close();
  await server.close();
}

/** Opens a session and gives it a target, with the fastballs that are thrown in between. */
export async function withFastballs(session: string, coach: TestCoach, fastballs: () => Promise<void>): Promise<void> {
  await coach.say(opening(session));
  await coach.say({ kind: 'intent-set', session, intent: 'four-seam' });
  await fastballs();
  await coach.say({ kind: 'zone-set', session, zone: CIRCLE, speedBand: { lowMps: -inchesToM(200), highMps: -inchesToM(100) }, reason: null });
}

export const cue = (session: string, words: string) => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } }) as const;

/** A device that counts its own throws. */
export function counted(device: TestDevice): (body: ThrowBody, count: number) => Promise<void> {
  let sequence = 0;
  return async (body, count) => {
    for (let thrown = 0; thrown < count; thrown += 1) await device.throws((sequence += 1), body);
  };
}
