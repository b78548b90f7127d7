import type { IncomingMessage } from 'node:http';
import type { Server } from 'socket.io';
import type { Refusal } from '../../core/facts/wire.ts';
import { PerAddress } from '../per-address.ts';

/** Screens of one address; a building whose phones all come through one router has far fewer. */
const MOST_SCREENS = 512;
/** Lines up to here are told that there are too many; further ones are not even opened. */
const MOST_LINES = 2 * MOST_SCREENS;

const TOO_MANY: Refusal = { kind: 'refused', code: 'too-many-screens', path: '', sentence: `From this machine ${MOST_SCREENS} screens are open already; close some, then load this page anew.` };

/** Holds one machine to as many screens as a building can have. A line counts from its first byte, let in or not, until it is closed. */
export class LinesPerAddress {
  readonly #lines = new PerAddress();

  watch({ engine }: Pick<Server, 'engine'>): void {
    engine.on('connection', (line: { readonly remoteAddress: string; once(event: 'close', then: () => void): void }) => line.once('close', this.#lines.came(line.remoteAddress)));
  }

  /** Why a request for a new line is turned away; one of a line that stands names that line. */
  turnedAway({ url, socket }: Pick<IncomingMessage, 'url' | 'socket'>): string | null {
    const isNew = !/[?&]sid=/.test(url ?? '');
    return isNew && this.#lines.of(socket.remoteAddress ?? '') >= MOST_LINES ? TOO_MANY.sentence : null;
  }

  /** Why the screen of a line is not let in. */
  refusal(address: string): Refusal | null {
    return this.#lines.of(address) > MOST_SCREENS ? TOO_MANY : null;
  }
}
