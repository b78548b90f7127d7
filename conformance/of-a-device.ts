import { PROTOCOL_VERSION, type ServerFrame } from '../core/facts/frames.ts';
import { openDeviceDoor, type Deed, type DeviceDoor } from './device-door.ts';
import { DeviceHeard, type Said } from './device-heard.ts';
import { DEVICE_RULES, type DeviceRule } from './device-rules.ts';
import type { Finding } from './rule.ts';

export interface DeviceAsked {
  /** Where the device shall connect: an address of this machine, and its port, 0 for a free one. */
  readonly host: string;
  readonly port: number;
  readonly token: string;
  readonly mound: string;
  readonly heartbeatSeconds: number;
  /** How long the next throw, or the next connection, may take. */
  readonly waitMs: number;
  /** How long the next heartbeat may take. */
  readonly beatMs: number;
  /** How long a device that was sent away is watched. */
  readonly quietMs: number;
  /** Called with the port once the door, /device, is open: the moment to start the device. */
  onOpen(port: number): void;
}

/**
 * Plays the server's part against a device that throws by itself, and says of every rule of the protocol whether the device keeps it.
 * Answers are withheld and connections broken on purpose. At least ten throws are needed.
 */
export async function askDevice(asked: DeviceAsked): Promise<Finding[]> {
  const visit = new DeviceVisit(asked);
  const door = await openDeviceDoor(asked, (deed) => visit.happened(deed));
  visit.standsAt(door);
  asked.onOpen(door.port);
  try {
    for (const act of ACTS) await act(visit);
  } catch (error) {
    if (!(error instanceof NothingMore)) throw error;
    visit.lost(error.message);
  } finally {
    await door.close();
  }
  return visit.findings();
}

type Act = (visit: DeviceVisit) => Promise<void>;

const ACTS: readonly Act[] = [
  async (visit) => {
    await visit.welcomed({ settledThrough: 0, gaps: [] });
    visit.reached('hello-first', 'heartbeat-first', 'frames-of-the-protocol', 'numbers-rise');
    await visit.thrown('store');
    await visit.thrown('store');
  },
  async (visit) => {
    const sequence = await visit.thrown('refuse-for-now');
    await visit.again(sequence, 'tries-again', `Number ${sequence} was refused with "final": false and did not come again.`);
  },
  async (visit) => {
    visit.settled(await visit.thrown('refuse-for-good'), 'forgets-what-is-refused');
  },
  async (visit) => {
    const sequence = await visit.thrown('say-nothing');
    await visit.reconnected({ settledThrough: sequence - 1, gaps: [] });
    visit.reached('same-run', 'same-content');
    await visit.again(sequence, 'sends-again', `Number ${sequence} had no answer when the connection broke and did not come again.`);
  },
  async (visit) => {
    const sequence = await visit.thrown('say-nothing');
    visit.settled(sequence, 'believes-the-welcome');
    await visit.reconnected({ settledThrough: sequence, gaps: [] });
    await visit.thrown('store');
    visit.reached('believes-the-welcome', 'forgets-what-is-refused');
  },
  async (visit) => {
    const missing = await visit.thrown('say-nothing');
    const above = await visit.thrown('store');
    visit.settled(above, 'fills-gaps');
    await visit.reconnected({ settledThrough: missing - 1, gaps: [[missing, above - 1]] });
    await visit.again(missing, 'fills-gaps', `Number ${missing} lay in the gap of the welcome and did not come again.`);
    await visit.thrown('store');
  },
  async (visit) => {
    await visit.beaten(2);
    await visit.sentAway();
  },
];

/** The device does nothing more: what was awaited, in words. */
class NothingMore extends Error {}

type Answer = 'store' | 'refuse-for-now' | 'refuse-for-good' | 'say-nothing';
type Settled = Pick<Extract<ServerFrame, { kind: 'welcome' }>, 'settledThrough' | 'gaps'>;

class DeviceVisit {
  readonly #asked: DeviceAsked;
  readonly #heard: DeviceHeard;
  readonly #faults = new Map<DeviceRule, string>();
  readonly #reached = new Set<DeviceRule>();
  readonly #unread: Deed[] = [];
  #door: DeviceDoor | null = null;
  #wake: (() => void) | null = null;
  #lost: string | null = null;

  constructor(asked: DeviceAsked) {
    this.#asked = asked;
    this.#heard = new DeviceHeard(asked, (rule, seen) => this.#fault(rule, seen));
  }

  standsAt(door: DeviceDoor): void {
    this.#door = door;
  }

  happened(deed: Deed): void {
    this.#unread.push(deed);
    this.#wake?.();
  }

  /** Awaits a connection with its hello, and answers it. */
  async welcomed(settled: Settled): Promise<void> {
    await this.#until('a connection', (deed) => (deed.kind === 'connected' ? true : null));
    this.#heard.connected();
    await this.#until('a hello', (deed) => (this.#said(deed)?.kind === 'hello' ? true : null));
    const { heartbeatSeconds } = this.#asked;
    this.#door!.answer({ kind: 'welcome', protocol: PROTOCOL_VERSION, heartbeatSeconds, ...settled });
  }

  async reconnected(settled: Settled): Promise<void> {
    this.#door!.cut();
    await this.welcomed(settled);
  }

  /** Awaits the next new throw or correction and answers it so. */
  async thrown(answer: Answer): Promise<number> {
    const { sequence } = await this.#until('a new throw', (deed) => {
      const measured = this.#measured(deed);
      if (measured === null || measured.isNew) return measured?.frame ?? null;
      this.#door!.answer({ kind: 'stored', sequence: measured.frame.sequence });
      return null;
    });
    this.#answer(sequence, answer);
    return sequence;
  }

  /** Awaits a number once more and stores it; what is new meanwhile is stored as well. */
  async again(awaited: number, rule: DeviceRule, otherwise: string): Promise<void> {
    const found = await this.#within(this.#asked.waitMs, (deed) => {
      const measured = this.#measured(deed);
      if (measured === null) return null;
      this.#answer(measured.frame.sequence, 'store');
      return measured.frame.sequence === awaited ? true : null;
    });
    if (found === null) this.#fault(rule, otherwise);
    else this.reached(rule);
  }

  /** Awaits so many heartbeats; what is thrown meanwhile is stored. */
  async beaten(times: number): Promise<void> {
    const { beatMs, heartbeatSeconds } = this.#asked;
    for (let beat = 1; beat <= times; beat += 1) {
      const found = await this.#within(beatMs, (deed) => {
        const said = this.#said(deed);
        if (said?.kind === 'measured') this.#answer(said.frame.sequence, 'store');
        return said?.kind === 'heartbeat' ? true : null;
      });
      if (found === null) return this.#fault('heartbeats', `No heartbeat came for ${beatMs / 1000} s; the welcome asks for one every ${heartbeatSeconds} s.`);
    }
    this.reached('heartbeats');
  }

  settled(sequence: number, rule: DeviceRule): void {
    this.#heard.settle(sequence, rule);
  }

  async sentAway(): Promise<void> {
    this.#door!.dismiss(4001, 'another connection of this device');
    const back = await this.#within(this.#asked.quietMs, (deed) => (deed.kind === 'connected' ? true : null));
    if (back === null) this.reached('stays-away');
    else this.#fault('stays-away', 'It connected again after its connection was closed with code 4001.');
  }

  reached(...rules: readonly DeviceRule[]): void {
    for (const rule of rules) this.#reached.add(rule);
  }

  lost(why: string): void {
    this.#lost = why;
  }

  findings(): Finding[] {
    return (Object.keys(DEVICE_RULES) as DeviceRule[]).map((rule): Finding => {
      const sentence = DEVICE_RULES[rule];
      const fault = this.#faults.get(rule);
      if (fault !== undefined) return { rule, sentence, outcome: 'broken', seen: fault };
      return this.#reached.has(rule) ? { rule, sentence, outcome: 'kept', seen: null } : { rule, sentence, outcome: 'not-reached', seen: this.#lost };
    });
  }

  #fault(rule: DeviceRule, seen: string): void {
    if (!this.#faults.has(rule)) this.#faults.set(rule, seen);
  }

  #answer(sequence: number, answer: Answer): void {
    const refusal = { kind: 'refused', sequence, path: '' } as const;
    switch (answer) {
      case 'store': return this.#door!.answer({ kind: 'stored', sequence });
      case 'refuse-for-now': return this.#door!.answer({ ...refusal, code: 'storage-failed', sentence: 'Nothing was stored; send it again after a pause.', final: false });
      case 'refuse-for-good': return this.#door!.answer({ ...refusal, code: 'impossible', sentence: 'This one is refused on purpose; forget it.', final: true });
      case 'say-nothing':
    }
  }

  #said(deed: Deed): Said | null {
    return deed.kind === 'said' ? this.#heard.take(deed.text, deed.isBinary) : null;
  }

  #measured(deed: Deed): Extract<Said, { kind: 'measured' }> | null {
    const said = this.#said(deed);
    return said?.kind === 'measured' ? said : null;
  }

  async #until<Found>(awaited: string, look: (deed: Deed) => Found | null): Promise<Found> {
    const found = await this.#within(this.#asked.waitMs, look);
    if (found === null) throw new NothingMore(`${awaited[0]!.toUpperCase()}${awaited.slice(1)} was awaited for ${this.#asked.waitMs / 1000} s and did not come.`);
    return found;
  }

  /** Looks at what happens, one deed after the other, until one is what was looked for; null when the time is over. */
  async #within<Found>(waitMs: number, look: (deed: Deed) => Found | null): Promise<Found | null> {
    let over = false;
    const timer = setTimeout(() => {
      over = true;
      this.#wake?.();
    }, waitMs);
    try {
      for (;;) {
        const deed = this.#unread.shift();
        const found = deed === undefined ? null : look(deed);
        if (found !== null) return found;
        if (deed === undefined && over) return null;
        if (deed === undefined) await new Promise<void>((resolve) => (this.#wake = resolve));
      }
    } finally {
      clearTimeout(timer);
    }
  }
}
