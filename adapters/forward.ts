import type { Hello } from '../core/facts/frames.ts';
import type { Chance } from '../device/backoff.ts';
import { DeviceClient, type RecordedFrame, type Refused } from '../device/client.ts';
import type { Clock } from '../device/clock.ts';

/** How the door answered a frame. */
export type Answer = { readonly kind: 'stored' } | Pick<Refused, 'kind' | 'code' | 'path' | 'sentence'>;

/** Why an adapter cannot go on; the message is one sentence that says what to do. */
export class AdapterFailure extends Error {}

export interface ForwardOptions {
  /** Of the device door. */
  readonly url: string;
  /** Everything of a hello but the run, which comes with each message. */
  readonly hello: Omit<Hello, 'run'>;
  /** Whether the device tells by heartbeats that it lives; if not, it is taken to live as long as this program. */
  readonly hasHeartbeats: boolean;
  readonly clock: Clock;
  readonly chance: Chance;
  /** Gets every sentence that a person should read. */
  readonly print: (line: string) => void;
}

const HEARD_FOR_MS = 5_000;
/** A device that is silent for so long is taken off its mound, before the door does it. */
const LEAVES_AFTER_MS = 30_000;

/** Brings frames of one device to the device door, one after the other, and waits for the answer to each for as long as it takes. */
export class Forwarder {
  /** How many frames were answered in which way so far. */
  readonly answered = { stored: 0, refused: 0 };
  readonly #options: ForwardOptions;
  #line: { readonly run: string; readonly client: DeviceClient } | null = null;
  #heard: { readonly deviceMs: number; readonly atMs: number } | null = null;
  #answer: Answer | null = null;
  #waiting = false;
  #callOffLeaving: (() => void) | null = null;

  constructor(options: ForwardOptions) {
    this.#options = options;
  }

  /**
   * Returns once the frame is stored or finally refused; null when the adapter was closed before. Not to be called again until then.
   * @throws {AdapterFailure} when the door will never take anything from this adapter, such as for a wrong token
   */
  async forward(run: string, frame: RecordedFrame): Promise<Answer | null> {
    this.#answer = null;
    this.#waiting = true;
    const client = this.#clientOf(run);
    client.record(frame);
    await client.settled();
    this.#waiting = false;
    if (client.givenUp !== null) throw new AdapterFailure(client.givenUp);
    const answer = this.#answer as Answer | null;
    if (answer !== null) this.answered[answer.kind] += 1;
    return answer;
  }

  /** The device has told its own time. */
  heartbeat(run: string, deviceMs: number): void {
    this.#heard = { deviceMs, atMs: this.#options.clock.nowMs() };
    if (!this.#waiting) this.#clientOf(run);
  }

  close(): void {
    this.#callOffLeaving?.();
    this.#line?.client.close();
    this.#line = null;
  }

  /** One connection a run, because a hello names it. */
  #clientOf(run: string): DeviceClient {
    this.#stay();
    if (this.#line?.run === run) return this.#line.client;
    this.#line?.client.close();
    const { url, hello, hasHeartbeats, clock, chance: random, print } = this.#options;
    const client = new DeviceClient({
      url, clock, random, print,
      hello: { ...hello, run },
      asksForAnswers: true,
      // What is sent in order has nothing before it that could still come.
      givesUpOn: ['nothing-to-correct'],
      onSettled: (_sequence, _how, why) => (this.#answer = why === undefined ? { kind: 'stored' } : { kind: 'refused', code: why.code, path: why.path, sentence: why.sentence }),
      ...(hasHeartbeats ? { deviceClock: { nowMs: () => this.#deviceMs(), isHeard: () => this.#isHeard() } } : {}),
    });
    this.#line = { run, client };
    return client;
  }

  #stay(): void {
    const { clock, hasHeartbeats } = this.#options;
    if (!hasHeartbeats) return;
    this.#callOffLeaving?.();
    this.#callOffLeaving = clock.after(LEAVES_AFTER_MS, () => (this.#waiting ? this.#stay() : this.close()));
  }

  #isHeard(): boolean {
    return this.#heard !== null && this.#options.clock.nowMs() - this.#heard.atMs <= HEARD_FOR_MS;
  }

  #deviceMs(): number {
    const nowMs = this.#options.clock.nowMs();
    return this.#heard === null ? nowMs : this.#heard.deviceMs + nowMs - this.#heard.atMs;
  }
}
