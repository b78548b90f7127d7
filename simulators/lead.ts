import type { CoachSays } from '../core/facts/coach.ts';
import type { MoundHead } from '../core/facts/views.ts';
import type { Clock } from '../device/clock.ts';
import type { Tablet } from './coach.ts';

/** The mound has to show what was said within this time; then the throw is thrown anyhow. */
const SHOWN_WITHIN_MS = 2_000;

interface LeadOptions {
  readonly tablet: Tablet;
  readonly clock: Clock;
  readonly print: (line: string) => void;
  /** Frames of the simulator's own devices that can have become facts so far. */
  readonly framesHandedOver: () => number;
  readonly begins: boolean;
}

/**
 * Whether the simulated coach leads this mound. The coach counts: every fact since it came is either its own or a throw of its
 * devices; one more, and a person at Bench has spoken. From then on the coach says nothing.
 */
export class Lead {
  readonly #options: LeadOptions;
  #leads: boolean;
  #saidSoFar = 0;
  #firstPlace: number | null = null;

  constructor(options: LeadOptions) {
    this.#options = options;
    this.#leads = options.begins;
    if (options.tablet.head !== null) this.#count(options.tablet.head);
    options.tablet.onHead((head) => this.#count(head));
  }

  get leads(): boolean {
    return this.#leads;
  }

  yieldTo(reason: string): void {
    if (!this.#leads) return;
    this.#leads = false;
    this.#options.print(`coach: ${reason}; the simulated coach says nothing any more, the athlete throws what Bench says`);
  }

  /** Says all of it in this order while the coach leads, and waits until the mound shows it. A refusal means that somebody else is at work. */
  async say(all: readonly CoachSays[]): Promise<void> {
    for (const says of all) {
      if (!this.#leads) return;
      this.#saidSoFar += 1;
      const reply = await this.#options.tablet.say(says);
      if (reply.kind === 'stored') {
        await this.#shown(reply.place);
        continue;
      }
      if (reply.code === 'no-answer') {
        this.#options.print('coach: the server does not answer; the athlete waits for nobody');
        return;
      }
      this.#saidSoFar -= 1;
      this.yieldTo(`${says.kind} was refused (${reply.sentence})`);
    }
  }

  #count(head: MoundHead): void {
    this.#firstPlace ??= head.place;
    const facts = head.place - this.#firstPlace;
    if (facts > this.#saidSoFar + this.#options.framesHandedOver()) this.yieldTo('a person has taken over at Bench');
  }

  #shown(place: number): Promise<void> {
    const { tablet, clock } = this.#options;
    return new Promise((resolve) => {
      const done = (): void => {
        forget();
        callOff();
        resolve();
      };
      const forget = tablet.onHead((head) => {
        if (head.place >= place) done();
      });
      const callOff = clock.after(SHOWN_WITHIN_MS, done);
      if ((tablet.head?.place ?? 0) >= place) done();
    });
  }
}
