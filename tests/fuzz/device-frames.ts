import { once } from 'node:events';
import * as fc from 'fast-check';
import { WebSocket } from 'ws';
import { z } from 'zod';
import { deviceFrameSchema, helloSchema, serverFrameSchema } from '../../core/facts/frames.ts';
import { hello } from '../server/frames.ts';
import { inBatches, type Chance } from './cases.ts';
import { valuesOf, type Known, type Schema } from './from-schema.ts';
import { mutated, texts } from './mutate.ts';
import type { UnderFire } from './server-under-fire.ts';

interface Message {
  readonly text: string;
  readonly isBinary: boolean;
  readonly greeted: boolean;
}

/** Frames kept to the schemas, frames with something wrong in them, and text that is no frame, before and after a hello. */
function messages(known: Known): fc.Arbitrary<Message> {
  const [hellos, frames] = [helloSchema, deviceFrameSchema].map((schema) => valuesOf(z.toJSONSchema(schema, { io: 'input' }) as Schema, known)) as [fc.Arbitrary<unknown>, fc.Arbitrary<unknown>];
  const said = fc.oneof({ weight: 2, arbitrary: frames }, { weight: 4, arbitrary: mutated(frames) }, { weight: 1, arbitrary: hellos }, { weight: 2, arbitrary: mutated(hellos) });
  return fc.record({ text: fc.oneof({ weight: 9, arbitrary: texts(said) }, { weight: 1, arbitrary: fc.string() }), isBinary: fc.nat(19).map((n) => n === 0), greeted: fc.nat(9).map((n) => n > 0) });
}

/** Messages that stand unanswered on a line at the same time: a device does not wait for answers either. */
const VOLLEY = 100;
/** Each volley is a device of its own, because one that sends so much for nothing is slowed; on one mound after the other, because the one before may not be gone yet. */
const MOUNDS = 20;
/** With which the door may close a line on which something wrong was said. */
const CLOSING_CODES = [1008, 1013, 4001];

/**
 * Sends messages to the device door. Behind a hello every message but a heartbeat must get exactly one answer, in the protocol, and the line stay open;
 * before one the first message must be answered.
 * @returns how many messages were dealt with as they must be
 */
export function fireDevices(server: UnderFire, chance: Chance): Promise<number> {
  const url = `${server.address.replace('http', 'ws')}/device`;
  let runs = 0;
  return inBatches(messages([server.token, 'fuzz-1', 'run-1']), chance, async (batch) => {
    const [strange, greeted] = [batch.filter((message) => !message.greeted), batch.filter((message) => message.greeted)];
    for (const message of strange) await alone(url, message);
    for (let from = 0; from < greeted.length; from += VOLLEY) {
      runs += 1;
      const device = { device: `fuzz-${runs}`, mound: `fuzz-${runs % MOUNDS}`, run: `run-${chance.seed}-${runs}` };
      const line = await Line.open(url);
      await line.volley([{ text: JSON.stringify(hello(server.token, device)), isBinary: false }], 1);
      const volley = greeted.slice(from, from + VOLLEY);
      await line.volley(volley, volley.filter((message) => !isHeartbeat(message)).length);
      await line.leave();
    }
    return strange.length + greeted.length;
  });
}

async function alone(url: string, message: Message): Promise<void> {
  const line = await Line.open(url);
  await line.volley([message], 1);
  await line.leave();
}

class Line {
  readonly #socket: WebSocket;
  #answers = 0;
  #fault: string | null = null;
  #heard: () => void = () => {};

  private constructor(socket: WebSocket) {
    this.#socket = socket;
    socket.on('message', (data) => {
      const frame = serverFrameSchema.safeParse(JSON.parse(String(data)));
      if (!frame.success) this.#fault = `The door answered with no frame of the protocol: ${String(data)}`;
      this.#answers += 1;
      this.#heard();
    });
    socket.on('error', (error) => (this.#fault = error.message));
    socket.on('close', (code) => {
      if (this.#fault === null && !CLOSING_CODES.includes(code)) this.#fault = `The door closed with code ${code}.`;
      this.#heard();
    });
  }

  static async open(url: string): Promise<Line> {
    const socket = new WebSocket(url);
    const line = new Line(socket);
    await once(socket, 'open');
    return line;
  }

  /** Sends the messages at once and awaits so many answers. */
  async volley(messages: readonly Pick<Message, 'text' | 'isBinary'>[], answers: number): Promise<void> {
    this.#answers = 0;
    for (const { text, isBinary } of messages) this.#socket.send(isBinary ? Buffer.from(text) : text, { binary: isBinary });
    while (this.#fault === null && this.#answers < answers) {
      if (this.#socket.readyState !== WebSocket.OPEN) this.#fault = 'The door closed the line before it had answered.';
      else await new Promise<void>((resolve) => (this.#heard = resolve));
    }
    const said = messages.length === 1 ? messages[0]!.text : `${messages.length} messages, the first of them ${messages[0]?.text}`;
    if (this.#fault !== null) throw new Error(`${this.#fault} Said was: ${said.slice(0, 2_000)}`);
    if (this.#answers > answers) throw new Error(`${this.#answers} answers came instead of ${answers}. Said was: ${said.slice(0, 2_000)}`);
  }

  async leave(): Promise<void> {
    if (this.#socket.readyState === WebSocket.CLOSED) return;
    this.#socket.removeAllListeners('close');
    this.#socket.terminate();
    await once(this.#socket, 'close');
  }
}

/** Heartbeats are the only frames without an answer. */
function isHeartbeat({ text, isBinary }: Message): boolean {
  try {
    const frame = isBinary ? null : deviceFrameSchema.safeParse(JSON.parse(text));
    return frame?.data?.kind === 'heartbeat';
  } catch {
    return false;
  }
}
