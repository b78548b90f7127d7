import * as fc from 'fast-check';
import { io, type Socket } from 'socket.io-client';
import { z } from 'zod';
import { saySchema, screenHelloSchema, watchSchema } from '../../core/facts/wire.ts';
import { inBatches, type Chance } from './cases.ts';
import { valuesOf, type Known, type Schema } from './from-schema.ts';
import { mutated } from './mutate.ts';
import type { UnderFire } from './server-under-fire.ts';

interface Command {
  readonly event: 'watch' | 'say';
  readonly value: unknown;
}

/** A screen that was let in says so many things at once, and is followed by the next: one that says much more is told to wait, unheard. */
const VOLLEY = 50;

/** Names that come up again and again, so that much of what is said is about sessions and throws that are there. */
const KNOWN: Known = ['fuzz-1', 'fuzz-2', 'session-1', 'session-2', 'session-3', 'athlete-1', 'athlete-2', 'A', 'B', 'America/Chicago'];

function commands(): fc.Arbitrary<Command> {
  const command = (event: Command['event'], schema: z.ZodType): fc.Arbitrary<Command> => {
    const values = valuesOf(z.toJSONSchema(schema, { io: 'input' }) as Schema, KNOWN);
    return fc.oneof({ weight: 3, arbitrary: values }, { weight: 4, arbitrary: mutated(values) }).map((value) => ({ event, value }));
  };
  return fc.oneof({ weight: 5, arbitrary: command('say', saySchema) }, { weight: 1, arbitrary: command('watch', watchSchema) });
}

/**
 * Says and asks on screens what can and cannot be said. Everything must be answered, by what the wire knows as an answer.
 * @returns how many commands were answered so
 */
export function fireViewers(server: UnderFire, chance: Chance): Promise<number> {
  return inBatches(commands(), chance, async (batch) => {
    let done = 0;
    for (let from = 0; from < batch.length; from += VOLLEY) {
      const screen = await open(server.address, {});
      const answers = await Promise.all(batch.slice(from, from + VOLLEY).map(({ event, value }) => answered(screen, event, value)));
      done += answers.length;
      screen.close();
    }
    return done;
  });
}

/** Hellos of screens: whatever is in them, the server lets the screen in or ends the connection. */
export function fireHellos(server: UnderFire, chance: Chance): Promise<number> {
  const hellos = valuesOf(z.toJSONSchema(screenHelloSchema, { io: 'input' }) as Schema, []);
  return inBatches(fc.oneof(hellos, mutated(hellos)), chance, async (batch) => {
    for (const hello of batch) {
      const screen = await open(server.address, typeof hello === 'object' && hello !== null ? hello : { hello });
      screen.close();
    }
    return batch.length;
  });
}

async function open(address: string, auth: object): Promise<Socket> {
  const screen = io(address, { transports: ['websocket'], forceNew: true, reconnection: false, auth });
  await Promise.race([happens(screen, 'connect'), happens(screen, 'disconnect')]);
  return screen;
}

function happens(screen: Socket, event: string): Promise<unknown> {
  return new Promise((resolve) => screen.once(event, resolve));
}

const ANSWERS = ['stored', 'refused', 'watching'];

async function answered(screen: Socket, event: Command['event'], value: unknown): Promise<void> {
  const left = happens(screen, 'disconnect').then((reason) => ({ kind: `the screen was cut off: ${String(reason)}` }));
  const answer = (await Promise.race([screen.emitWithAck(event, value), left])) as { kind: string; code?: string; sentence?: string };
  const complete = ANSWERS.includes(answer.kind) && (answer.kind !== 'refused' || (Boolean(answer.code) && Boolean(answer.sentence)));
  if (!complete || answer.code === 'no-view' || answer.code === 'too-fast') throw new Error(`${event} was answered with ${JSON.stringify(answer).slice(0, 300)}. Said was: ${JSON.stringify(value)?.slice(0, 2_000)}`);
}
