import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { systemClock } from '../../server/clock.ts';
import { startServer as startHere } from '../../server/serve.ts';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { BAND, targetIsSet } from './changeup-next.ts';
import { connectCoach } from './coach.ts';
import { connectDevice, counted } from './device.ts';

export const [ON_TARGET, SHORT] = WORKED_THROWS.map(easyFrame) as [ThrowBody, ThrowBody];
const HOURS_AGO = 30;

/** Writes a bullpen of 30 hours ago into a data folder: two cues in blocks, the second on target, and closes it. */
export async function practisedBefore(dataFolder: string): Promise<void> {
  const clock = { ...systemClock, nowMs: () => systemClock.nowMs() - HOURS_AGO * 3_600_000 };
  const server = await startHere({ port: 0, host: '127.0.0.1', dataFolder, webFolder: path.join(dataFolder, 'none'), clock, logLevel: 'silent' });
  const coach = await connectCoach(server, 'north-1');
  const device = await connectDevice({ address: server.address, token: readFileSync(server.tokenFile, 'utf8').trim() });
  const throwAll = counted(device);
  await targetIsSet(coach, throwAll, { session: 'before', speedBand: BAND });
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

export const cue = (session: string, words: string) => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } }) as const;
