import { expect } from 'vitest';
import { DeviceClient } from '../../../device/client.ts';
import { randomFrom } from '../../../simulators/random.ts';
import { hello, path as pathBody, summary } from '../frames.ts';
import { hurriedClock } from './hurried.ts';

/** What a server of these tests takes from devices on this machine. */
export const TOKEN = 'the token of these tests';
const IN_FLIGHT = 24;

/** Throws as fast as it is answered, and keeps what is not. */
export class StreamingDevice {
  readonly acknowledged = new Set<number>();
  sent = 0;
  // What a welcome settles is never answered one by one, so it is looked at how much is still kept.
  readonly #hand = setInterval(() => this.#throwOn(), 2);
  #looking: { readonly at: number; readonly resolve: () => void }[] = [];
  readonly #client: DeviceClient;

  constructor(address: string, mound: string) {
    this.#client = new DeviceClient({
      url: `${address.replace(/^http/, 'ws')}/device`,
      hello: hello(TOKEN, { device: `eye-${mound}`, mound }),
      clock: hurriedClock,
      random: randomFrom(1, 'backoff'),
      print: () => {},
      onSettled: (sequence, how) => this.#settled(sequence, how),
    });
  }

  /** Resolves when so many more are acknowledged. */
  answered(more: number): Promise<void> {
    return new Promise((resolve) => this.#looking.push({ at: this.acknowledged.size + more, resolve }));
  }

  async finish(): Promise<void> {
    clearInterval(this.#hand);
    await this.#client.settled();
    expect(this.#client.givenUp).toBeNull();
  }

  close(): void {
    clearInterval(this.#hand);
    this.#client.close();
  }

  #throwOn(): void {
    while (this.#client.unsettledCount < IN_FLIGHT) {
      const sequence = (this.sent += 1);
      this.#client.record({ kind: 'throw', sequence, time: 1000 * sequence, body: sequence % 5 === 0 ? pathBody() : summary(70 + (sequence % 25)) });
    }
  }

  #settled(sequence: number, how: 'stored' | 'refused'): void {
    expect([sequence, how]).toEqual([sequence, 'stored']);
    this.acknowledged.add(sequence);
    const met = this.#looking.filter(({ at }) => at <= this.acknowledged.size);
    this.#looking = this.#looking.filter((one) => !met.includes(one));
    for (const { resolve } of met) resolve();
  }
}
