import { createInterface, type Interface } from 'node:readline';
import { Writable, type Readable } from 'node:stream';
import { StartFailure } from '../start-failure.ts';
import { tooWeak } from './passphrase.ts';

/** A terminal with a person at it. */
export interface Terminal {
  readonly input: Readable;
  readonly output: Writable;
}

/**
 * Asks for a new passphrase, twice and without showing it, until it will do and both are the same.
 * @throws {StartFailure} when the person breaks off
 */
export async function askPassphrase({ input, output }: Terminal): Promise<string> {
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() });
  // As a terminal it takes keys back and breaks off like any other prompt; what it would show of them goes nowhere.
  const lines = createInterface({ input, output: silent, terminal: true, historySize: 0 });
  try {
    output.write('Other machines will reach this server, so coaches sign in by a passphrase. Choose one now; only its hash is kept.\n');
    for (;;) {
      const first = await answer(lines, 'Passphrase (not shown): ', output);
      const weakness = tooWeak(first);
      if (weakness !== null) {
        output.write(`That one ${weakness}.\n`);
        continue;
      }
      if ((await answer(lines, 'The same once more: ', output)) === first) return first;
      output.write('The two are not the same; type it anew.\n');
    }
  } finally {
    lines.close();
  }
}

function answer(lines: Interface, question: string, output: Writable): Promise<string> {
  return new Promise<string>((resolve, reject) => {
    const brokenOff = (): void => reject(new StartFailure('No passphrase was given, so nothing was started.'));
    lines.once('close', brokenOff);
    lines.once('SIGINT', () => lines.close());
    lines.question('', (typed) => {
      lines.off('close', brokenOff);
      lines.removeAllListeners('SIGINT');
      resolve(typed);
    });
    output.write(question);
  }).finally(() => output.write('\n'));
}
