import type { Command } from 'commander';
import path from 'node:path';
import { wronglyAsked } from './failure.ts';
import { address, place, wholeNumber } from './values.ts';

/** What is said of a server on the command line. */
export interface Serving {
  readonly port: number;
  readonly host: string;
  readonly data: string;
  readonly passphraseFile?: string;
  readonly tls?: true;
  readonly cert?: string;
  readonly key?: string;
  readonly json?: true;
}

const OPEN = `
To let phones and tablets of the building in, listen on 0.0.0.0 and give a passphrase and --tls, or --cert and --key.`;

/** The options of every command that serves. `data` is the folder where throws are kept when no other is named. */
export function withServing(command: Command, home: string, data: string): Command {
  return command
    .option('--port <n>', 'port to listen on, 0 for any free one', wholeNumber('--port', 0, 65_535), 8080)
    .option('--host <address>', 'address of this machine to listen on', address, '127.0.0.1')
    .option('--data <folder>', 'where the throws are kept', place('--data'), path.join(home, data))
    .option('--passphrase-file <file>', 'its first line is what coaches sign in with; needed once, then its hash is kept', place('--passphrase-file'))
    .option('--tls', 'encrypt, with a certificate made here that phones accept once')
    .option('--cert <file>', 'encrypt, with a certificate of yours', place('--cert'))
    .option('--key <file>', 'the key of that certificate', place('--key'))
    .option('--json', 'one line of JSON where a person would read more')
    .addHelpText('after', OPEN);
}

/** How to encrypt; undefined for not at all. */
export function tlsOf({ tls, cert, key }: Serving): 'self-made' | { readonly certFile: string; readonly keyFile: string } | undefined {
  if ((cert === undefined) !== (key === undefined)) return wronglyAsked('--cert and --key belong together; give both.');
  if (tls && cert !== undefined) return wronglyAsked('--tls makes a certificate and --cert gives one; choose one of them.');
  return cert !== undefined && key !== undefined ? { certFile: cert, keyFile: key } : tls ? 'self-made' : undefined;
}
