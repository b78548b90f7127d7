import { impossibility } from '../../core/facts/bounds.ts';
import type { DeviceSays, Source } from '../../core/facts/fact.ts';
import { HEARTBEAT_SECONDS, PROTOCOL_VERSION, type DeviceFrame, type Hello, type RefusalCode } from '../../core/facts/frames.ts';
import { asSentence } from '../complaint.ts';
import type { FactLog } from '../log/fact-log.ts';
import type { Standing } from './floods.ts';
import { openFrame, readDeviceFrame, readHello, type FrameRefusal } from './read-frame.ts';
import type { StageHere } from './stage-of.ts';
import type { Wire } from './wire.ts';

/** A throw older than the newest time of its device by more than this was kept back: the stage of now says nothing about it. */
export const LATE_MS = 10_000;
/** Frames of one connection that may wait for the disk before it is read no further. */
const MOST_WAITING = 256;
export const MOST_REFUSALS_BEFORE_HELLO = 5;
const MOST_KEPT_OF_A_FRAME = 64 * 1024;
const FLOODED = 'This device goes on sending frames that are refused, or heartbeats far more often than they are asked for; mend the program, keep what is not answered, and connect again in a minute.';

/** What a connection needs of the rooms around it. */
export interface DoorSide {
  readonly log: FactLog;
  stageOf(mound: string, place: number | null): StageHere | null;
  /** Whether its token lets a device in; otherwise the reason why not. */
  unknown(hello: Hello): string | null;
  /** Whether the token that it showed reaches a mound. */
  reaches(mound: string): boolean;
  /** Lets a device onto its mound, or gives the reason why not. */
  admit(hello: Hello): string | null;
  heard(hello: Hello): void;
  /** A throw or correction has come; what is returned is called when it is answered as stored. */
  frameCame(): () => void;
  refused(code: RefusalCode): void;
  /** A frame has come that brings nothing: a heartbeat, or one that is refused and would be kept with so many bytes. Slows the device where there are too many. */
  forNothing(hello: Hello | null, bytes: number): Standing;
  /** Whether the device has flooded a moment ago. */
  isKeptOff(hello: Hello): boolean;
}

type Measured = Extract<DeviceFrame, { kind: 'throw' | 'correction' }>;

/** One device's conversation, from its hello on: every frame is answered, and what is stored is answered once it is on disk. */
export class Connection {
  hello: Hello | null = null;
  #refusedBeforeHello = 0;
  #newestTimeMs = -Infinity;
  #waiting = 0;
  readonly #wire: Wire;
  readonly #door: DoorSide;

  constructor(wire: Wire, door: DoorSide) {
    this.#wire = wire;
    this.#door = door;
  }

  async receive(bytes: Buffer, isBinary: boolean): Promise<void> {
    const { hello } = this;
    if (hello !== null) this.#door.heard(hello);
    const opened = openFrame(bytes, isBinary);
    if (opened.kind === 'refusal') return this.#refuse(opened, isBinary ? null : bytes.toString('utf8'));
    if (hello === null) return this.#greet(opened.value);
    const frame = readDeviceFrame(opened.value);
    switch (frame.kind) {
      case 'refusal': return this.#refuse(frame, bytes.toString('utf8'));
      case 'heartbeat': {
        this.#newestTimeMs = Math.max(this.#newestTimeMs, frame.time);
        if (this.#door.forNothing(hello, 0) === 'kept-off') this.#keepOff();
        return;
      }
      case 'throw':
      case 'correction': return this.#take(hello, frame, bytes);
    }
  }

  async #greet(value: unknown): Promise<void> {
    const hello = readHello(value);
    if (hello.kind === 'refusal') {
      await this.#refuse(hello, null);
      if (hello.code === 'wrong-protocol') this.#wire.close(1008, hello.code);
      return;
    }
    const unknown = this.#door.unknown(hello);
    if (unknown !== null) return this.#turnAway('wrong-token', 'token', unknown, 1008);
    if (this.#door.isKeptOff(hello)) return this.#turnAway('flooding', 'device', FLOODED, 1013);
    const busy = this.#door.admit(hello);
    if (busy !== null) return this.#turnAway('mound-busy', 'mound', busy, 1013);
    this.hello = hello;
    this.#door.heard(hello);
    const { through, gaps } = this.#door.log.settled(hello.device, hello.run);
    this.#wire.send({ kind: 'welcome', protocol: PROTOCOL_VERSION, settledThrough: through, gaps: gaps.map(([first, last]) => [first, last]), heartbeatSeconds: HEARTBEAT_SECONDS });
  }

  async #turnAway(code: 'wrong-token' | 'flooding' | 'mound-busy', path: string, sentence: string, closeCode: number): Promise<void> {
    await this.#refuse({ kind: 'refusal', code, path, sentence, sequence: null, final: false }, null);
    this.#wire.close(closeCode, code);
  }

  async #take(hello: Hello, frame: Measured, bytes: Buffer): Promise<void> {
    const acknowledged = this.#door.frameCame();
    const said = saidBy(hello, frame);
    const refused = this.#judge(hello, said);
    if (refused !== null) return this.#refuse(refused, bytes.toString('utf8'));
    this.#waits();
    const reply = await this.#door.log.append({ mound: hello.mound, by: `device:${hello.device}`, said });
    this.#waitsNoLonger();
    const { sequence } = frame;
    switch (reply.kind) {
      case 'stored': {
        this.#wire.send({ kind: 'stored', sequence });
        return acknowledged();
      }
      case 'failed': return this.#storageFailed(sequence, reply.sentence);
      case 'conflict': {
        const { code, path, sentence, final } = reply;
        if (code === 'request-differs') throw new Error('a device frame carries no request id');
        return this.#refuse({ kind: 'refusal', code, path, sentence, sequence, final }, bytes.toString('utf8'));
      }
    }
  }

  /** Whether a throw can have happened. One that is settled already is not judged again: the stage may have changed since. */
  #judge({ device, run, mound, units }: Hello, said: DeviceSays): FrameRefusal | null {
    const { sequence, time } = said.source;
    const { log } = this.#door;
    if (log.find({ device, run, sequence }) !== null) return null;
    const late = this.#newestTimeMs - time > LATE_MS;
    const original = said.kind === 'throw-corrected' ? log.find({ device, ...said.corrects }) : null;
    if (original?.kind === 'stored' && !this.#door.reaches(original.mound)) {
      return { kind: 'refusal', code: 'nothing-to-correct', path: 'corrects', sentence: `That throw lies on mound ${original.mound}, which this token does not open; correct it with the token of that mound.`, sequence, final: true };
    }
    const stage = original?.kind === 'stored' ? this.#door.stageOf(original.mound, original.place) : late ? null : this.#door.stageOf(mound, null);
    const impossible = impossibility(said.body, units, stage);
    if (impossible === null) return null;
    return { kind: 'refusal', code: 'impossible', path: impossible.path, sentence: asSentence(impossible.sentence), sequence, final: true };
  }

  /** Keeps the refusal, then tells it: a number may be forgotten only once its refusal is on disk. */
  async #refuse(refusal: FrameRefusal, frame: string | null): Promise<void> {
    const { hello } = this;
    const { code, path, sentence, sequence, final } = refusal;
    const settles = final && hello !== null;
    const standing = this.#door.forNothing(hello, frame?.length ?? 0);
    if (standing === 'kept-off') return this.#keepOff();
    // A flood does not fill the disk; but a number that is settled is settled there.
    if (standing === 'slowed' && !settles) return this.#tellRefused(refusal);
    this.#waits();
    const reply = await this.#door.log.refuse({
      mound: hello?.mound ?? null, device: hello?.device ?? null, run: hello?.run ?? null,
      sequence, code, path, sentence,
      settles,
      // Before a hello nobody has shown a token, so nothing of theirs is kept; a hello holds a token.
      frame: hello === null || code === 'hello-twice' ? null : (frame?.slice(0, MOST_KEPT_OF_A_FRAME) ?? null),
    });
    this.#waitsNoLonger();
    if (reply.kind === 'failed' && final) return this.#storageFailed(sequence, reply.sentence);
    this.#tellRefused(refusal);
  }

  #tellRefused({ code, path, sentence, sequence, final }: FrameRefusal): void {
    const { hello } = this;
    this.#door.refused(code);
    this.#wire.send({ kind: 'refused', sequence, code, path, sentence, final: final && hello !== null });
    if (hello === null && ++this.#refusedBeforeHello >= MOST_REFUSALS_BEFORE_HELLO) this.#wire.close(1008, 'no hello');
  }

  /** The frame that was too much is not settled: it may come again once the device has calmed down. */
  #keepOff(): void {
    this.#tellRefused({ kind: 'refusal', code: 'flooding', path: '', sentence: FLOODED, sequence: null, final: false });
    this.#wire.close(1013, 'flooding');
  }

  #storageFailed(sequence: number | null, sentence: string): void {
    this.#door.refused('storage-failed');
    this.#wire.send({ kind: 'refused', sequence, code: 'storage-failed', path: '', sentence, final: false });
  }

  #waits(): void {
    if (++this.#waiting === MOST_WAITING) this.#wire.pause('disk');
  }

  #waitsNoLonger(): void {
    if (--this.#waiting === MOST_WAITING / 2) this.#wire.resume('disk');
  }
}

function saidBy(hello: Hello, frame: Measured): DeviceSays {
  const { device, run, sight, axis, units, standardErrors } = hello;
  const { sequence, time, body } = frame;
  // Not spread into one another: said of every throw, that would cost as much as checking it.
  const source: Source = standardErrors === undefined ? { device, run, sight, axis, units, sequence, time } : { device, run, sight, axis, units, standardErrors, sequence, time };
  if (frame.kind === 'throw') return { kind: 'throw-measured', source, body };
  const { corrects, reason } = frame;
  return { kind: 'throw-corrected', source, corrects: { run: corrects.run ?? run, sequence: corrects.sequence }, reason: reason ?? null, body };
}
