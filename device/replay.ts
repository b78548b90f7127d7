import { PROTOCOL_VERSION, type ThrowBody } from '../core/facts/frames.ts';
import type { Source } from '../core/facts/fact.ts';
import type { Chance } from './backoff.ts';
import { DeviceClient } from './client.ts';
import { pause, type Clock } from './clock.ts';

/** One throw of a recording, as the device that saw it told it. */
interface RecordedThrow {
  /** When it arrived, in milliseconds since 1970. */
  readonly atMs: number;
  readonly source: Source;
  readonly body: ThrowBody;
}

export interface Replay {
  readonly url: string;
  readonly mound: string;
  readonly token: string;
  /** New for every replay: a server stores a number of a run once. */
  readonly run: string;
  readonly throws: readonly RecordedThrow[];
  /** 2 is twice as fast as it was thrown. */
  readonly speed: number;
  readonly clock: Clock;
  readonly random: Chance;
  readonly print: (line: string) => void;
  /** Called with how many throws were answered. */
  readonly onAnswered: (count: number) => void;
  readonly stop: AbortSignal;
}

export interface Replayed {
  readonly stored: number;
  readonly refused: number;
  /** Why the rest was not sent; null when all of it was. */
  readonly trouble: string | null;
}

/** Throws a recording again, through the device door and in its own rhythm: each device of it comes in its turn, because a mound has one at a time. */
export async function replay(wanted: Replay): Promise<Replayed> {
  const { throws, speed, clock, stop } = wanted;
  const answered = { stored: 0, refused: 0 };
  const startedMs = clock.nowMs();
  let recordedMs = 0;
  let trouble: string | null = null;
  for (const [turn, stretch] of stretches(throws).entries()) {
    const client = deviceOf(wanted, stretch[0]!, turn, answered);
    const close = (): void => client.close();
    stop.addEventListener('abort', close, { once: true });
    for (const [index, { thrown, afterMs }] of stretch.entries()) {
      recordedMs += afterMs;
      await pause(clock, Math.max(0, startedMs + recordedMs / speed - clock.nowMs()), stop);
      if (stop.aborted || client.givenUp !== null) break;
      client.record({ kind: 'throw', sequence: index + 1, time: clock.nowMs(), body: thrown.body });
    }
    // Once it is closed nothing is waited for.
    await client.settled();
    stop.removeEventListener('abort', close);
    trouble = client.givenUp;
    client.close();
    if (trouble !== null || stop.aborted) break;
  }
  return { ...answered, trouble };
}

interface Timed {
  readonly thrown: RecordedThrow;
  /** Since the throw before. */
  readonly afterMs: number;
}

/** Throws one after the other of the same device, saying the same of itself. */
function stretches(throws: readonly RecordedThrow[]): Timed[][] {
  const found: Timed[][] = [];
  throws.forEach((thrown, index) => {
    const before = throws[index - 1];
    const timed = { thrown, afterMs: before === undefined ? 0 : between(before, thrown) };
    if (before !== undefined && saysOfItself(before) === saysOfItself(thrown)) found.at(-1)!.push(timed);
    else found.push([timed]);
  });
  return found;
}

/** By the device's clock where it is one clock: throws that were kept back arrive all at once. */
function between(before: RecordedThrow, thrown: RecordedThrow): number {
  const sameClock = before.source.device === thrown.source.device && before.source.run === thrown.source.run;
  return Math.max(0, sameClock ? thrown.source.time - before.source.time : thrown.atMs - before.atMs);
}

const saysOfItself = ({ source: { device, sight, axis, units, standardErrors } }: RecordedThrow): string => JSON.stringify([device, sight, axis, units, standardErrors]);

function deviceOf({ url, mound, token, run, clock, random, print, onAnswered }: Replay, { thrown: { source } }: Timed, turn: number, answered: { stored: number; refused: number }): DeviceClient {
  const { device, sight, axis, units, standardErrors } = source;
  return new DeviceClient({
    url, clock, random, print,
    // Under its own name it would take the place of the device that is perhaps throwing at this moment.
    hello: { kind: 'hello', protocol: PROTOCOL_VERSION, device: `replay.${device}`.slice(0, 64), run: `${run}-${turn + 1}`, mound, token, sight, axis, units, ...(standardErrors === undefined ? {} : { standardErrors }) },
    onSettled(_, how) {
      answered[how] += 1;
      onAnswered(answered.stored + answered.refused);
    },
  });
}
