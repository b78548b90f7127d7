import { isDeepStrictEqual } from 'node:util';
import { deviceFrameSchema, helloSchema, type DeviceFrame, type Hello } from '../core/facts/frames.ts';
import type { DeviceRule } from './device-rules.ts';

type Measured = Extract<DeviceFrame, { kind: 'throw' | 'correction' }>;

export type Said = { readonly kind: 'hello'; readonly hello: Hello } | { readonly kind: 'heartbeat' } | { readonly kind: 'measured'; readonly frame: Measured; readonly isNew: boolean };

/** Remembers what a device has said and finds the faults that any frame can show, whatever the moment. */
export class DeviceHeard {
  readonly #given: { readonly token: string; readonly mound: string };
  readonly #onFault: (rule: DeviceRule, seen: string) => void;
  readonly #frames = new Map<number, Measured>();
  readonly #settled = new Map<number, DeviceRule>();
  #first: Hello | null = null;
  #greeted = false;
  #beaten = false;

  constructor(given: { readonly token: string; readonly mound: string }, onFault: (rule: DeviceRule, seen: string) => void) {
    this.#given = given;
    this.#onFault = onFault;
  }

  /** The highest number so far. */
  get highest(): number {
    return Math.max(0, ...this.#frames.keys());
  }

  connected(): void {
    this.#greeted = false;
    this.#beaten = false;
  }

  /** From now on a number may not come again; the rule says why. */
  settle(sequence: number, rule: DeviceRule): void {
    this.#settled.set(sequence, rule);
  }

  /** A frame as the device sent it; null when it is none that can be answered. */
  take(text: string, isBinary: boolean): Said | null {
    const value = isBinary ? undefined : json(text);
    if (value === undefined) return this.#fault('frames-of-the-protocol', isBinary ? 'A binary message came; send text.' : `A message is not JSON: ${text.slice(0, 120)}`);
    return this.#greeted ? this.#frame(value) : this.#hello(value);
  }

  #hello(value: unknown): Said | null {
    const read = helloSchema.safeParse(value);
    if (!read.success) return this.#fault('hello-first', `The first frame is no hello of the protocol (${places(read.error)}): ${JSON.stringify(value).slice(0, 120)}`);
    const hello = read.data;
    const first = this.#first ?? hello;
    if (hello.token !== this.#given.token || hello.mound !== this.#given.mound) this.#onFault('hello-first', `The hello has mound "${hello.mound}" and ${hello.token === this.#given.token ? 'the' : 'another'} token; given were mound "${this.#given.mound}" and the token.`);
    if (hello.device !== first.device || hello.run !== first.run) this.#onFault('same-run', `The first hello was of ${first.device}, run ${first.run}; after the reconnect it is ${hello.device}, run ${hello.run}.`);
    this.#first = first;
    this.#greeted = true;
    return { kind: 'hello', hello };
  }

  #frame(value: unknown): Said | null {
    const read = deviceFrameSchema.safeParse(value);
    if (!read.success) return this.#fault('frames-of-the-protocol', `A frame is not in the protocol (${places(read.error)}): ${JSON.stringify(value).slice(0, 120)}`);
    const frame = read.data;
    if (frame.kind === 'heartbeat') {
      this.#beaten = true;
      return { kind: 'heartbeat' };
    }
    if (!this.#beaten) this.#onFault('heartbeat-first', `Number ${frame.sequence} came before the first heartbeat of its connection.`);
    return this.#measured(frame);
  }

  #measured(frame: Measured): Said {
    const { sequence } = frame;
    const before = this.#frames.get(sequence);
    const broken = this.#settled.get(sequence);
    if (broken !== undefined) this.#onFault(broken, `Number ${sequence} came again although it was settled.`);
    if (before !== undefined && !isDeepStrictEqual(before, frame)) this.#onFault('same-content', `Number ${sequence} came again with another content: ${JSON.stringify(frame).slice(0, 160)}`);
    if (before === undefined && sequence <= this.highest) this.#onFault('numbers-rise', `Number ${sequence} is new after number ${this.highest}.`);
    this.#frames.set(sequence, before ?? frame);
    return { kind: 'measured', frame, isNew: before === undefined };
  }

  #fault(rule: DeviceRule, seen: string): null {
    this.#onFault(rule, seen);
    return null;
  }
}

function json(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function places(error: { readonly issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[] }): string {
  return error.issues.slice(0, 2).map(({ path, message }) => `${path.map(String).join('.') || 'the frame'}: ${message}`).join('; ');
}
