import { opened } from '../frames.ts';
import { WatchingScreen } from './watching.ts';

const NOTES_IN_FLIGHT = 2;

/** A coach who opens a session and writes one note after the other, each until it is answered. */
export class NoteTaker {
  /** Places by request. */
  readonly acknowledged = new Map<string, number>();
  readonly #mound: string;
  readonly #screen: WatchingScreen;
  #writing = true;
  readonly #done: Promise<unknown>;

  constructor(address: string, mound: string) {
    this.#mound = mound;
    this.#screen = new WatchingScreen(address, mound);
    this.#done = this.#say(`request-${mound}`, opened(`s-${mound}`)).then(() => Promise.all(Array.from({ length: NOTES_IN_FLIGHT }, (_, hand) => this.#write(hand))));
  }

  close(): void {
    this.#writing = false;
    this.#screen.close();
  }

  async finish(): Promise<void> {
    this.#writing = false;
    await this.#done;
  }

  async #write(hand: number): Promise<void> {
    let note = 0;
    while (this.#writing) {
      note += 1;
      // oxlint-disable-next-line no-await-in-loop -- one note after the other
      await this.#say(`request-${this.#mound}-${hand}-${note}`, { kind: 'note-written', session: `s-${this.#mound}`, place: null, text: `note ${note} of hand ${hand}` });
    }
  }

  async #say(request: string, says: unknown): Promise<void> {
    const reply = await this.#screen.say(request, says);
    if (reply.kind !== 'stored') throw new Error(reply.sentence);
    this.acknowledged.set(request, reply.place);
  }
}
