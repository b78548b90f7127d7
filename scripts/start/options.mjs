import { statSync } from 'node:fs';
import { isIP } from 'node:net';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { inRoot, ROOT } from '../prepare/places.mjs';
import { Trouble } from '../prepare/trouble.mjs';

const SHARED = {
  port: { type: 'string', default: '8080' },
  host: { type: 'string', default: '127.0.0.1' },
  data: { type: 'string' },
  'passphrase-file': { type: 'string' },
  tls: { type: 'boolean', default: false },
  cert: { type: 'string' },
  key: { type: 'string' },
  help: { type: 'boolean', short: 'h', default: false },
};
const SIMULATED = {
  interval: { type: 'string', default: '6' },
  seed: { type: 'string', default: '1' },
};

const LARGEST_SEED = 2 ** 32 - 1;

const OPEN = `
  To let phones and tablets of the building in, listen on 0.0.0.0 and give:
  --passphrase-file FILE  its first line is what coaches sign in with; needed once, then its hash is kept
  --tls                   encrypt, with a certificate made here that phones accept once
  --cert FILE --key FILE  encrypt, with a certificate of yours

`;

const HELP = {
  start: `npm start -- [options]

Installs and builds what has changed, starts the server and one simulated mound, and prints the addresses of the screens.

  --port N        port to listen on, 0 for any free one          (8080)
  --host ADDRESS  address of this machine to listen on           (127.0.0.1)
  --data FOLDER   where the throws are kept                      (data/demo)
${OPEN}  --interval S    seconds between two simulated throws           (6)
  --seed N        the same seed gives the same simulated throws  (1)
  --help          this text
`,
  serve: `npm run serve -- [options]

Installs and builds what has changed, starts the server without a simulated mound, and prints the addresses of the screens.

  --port N        port to listen on, 0 for any free one  (8080)
  --host ADDRESS  address of this machine to listen on   (127.0.0.1)
  --data FOLDER   where the throws are kept              (data/own)
${OPEN}  --help          this text
`,
};

/**
 * Reads what a person typed.
 * @param {string[]} args with "serve" in front when there shall be no simulated mound
 * @returns {{ kind: 'help', text: string } | { kind: 'run', port: number, host: string, data: string, passphraseFile: string | null, tls: boolean, cert: string | null, key: string | null, simulation: { intervalS: number, seed: number } | null }}
 * @throws {Trouble} with exit code 2 and a sentence, when an option or its value is not offered
 */
export function readOptions(args) {
  const serving = args[0] === 'serve';
  const values = parse(serving ? args.slice(1) : args, serving ? SHARED : { ...SHARED, ...SIMULATED });
  if (values.help) return { kind: 'help', text: serving ? HELP.serve : HELP.start };
  return {
    kind: 'run',
    port: wholeNumber('--port', values.port, 65_535),
    host: address(values.host),
    ...openTo(values),
    data: folder(values.data, serving ? 'own' : 'demo'),
    simulation: serving ? null : { intervalS: seconds('--interval', values.interval), seed: wholeNumber('--seed', values.seed, LARGEST_SEED) },
  };
}

function parse(args, options) {
  try {
    return parseArgs({ args, options, strict: true, allowPositionals: false }).values;
  } catch (error) {
    const first = String(error.message).split('. ')[0].replace(/\.$/, '').replaceAll(/\s*\n\s*/g, ' ');
    throw new Trouble(`${first}; --help lists the options.`, 2);
  }
}

function wholeNumber(name, text, largest) {
  const value = Number(text);
  if (/^\d+$/.test(text) && value <= largest) return value;
  throw new Trouble(`${name} is "${text}"; give a whole number from 0 to ${largest}.`, 2);
}

function seconds(name, text) {
  const value = Number(text);
  if (/^\d*\.?\d+$/.test(text) && value >= 0.1 && value <= 3600) return value;
  throw new Trouble(`${name} is "${text}"; give a number of seconds from 0.1 to 3600.`, 2);
}

function address(host) {
  if (host === 'localhost' || isIP(host) !== 0) return host;
  throw new Trouble(`--host is "${host}"; give 127.0.0.1, localhost or ::1 for this machine alone, 0.0.0.0 for the whole building, or another address of this machine.`, 2);
}

function openTo({ tls, cert, key, 'passphrase-file': passphraseFile }) {
  if ((cert === undefined) !== (key === undefined)) throw new Trouble('--cert and --key belong together; give both.', 2);
  if (tls && cert !== undefined) throw new Trouble('--tls makes a certificate and --cert gives one; choose one of them.', 2);
  return { tls, passphraseFile: file('--passphrase-file', passphraseFile), cert: file('--cert', cert), key: file('--key', key) };
}

function file(name, given) {
  if (given === undefined) return null;
  const meant = fromWhereTheyStand(given);
  if (given !== '' && statSync(meant, { throwIfNoEntry: false })?.isFile()) return meant;
  throw new Trouble(`${name} is "${given}", and there is no such file.`, 2);
}

function folder(given, ownName) {
  if (given === '') throw new Trouble('--data is empty; give a folder.', 2);
  if (given === undefined) return inRoot('data', ownName);
  const meant = fromWhereTheyStand(given);
  if (statSync(meant, { throwIfNoEntry: false })?.isDirectory() ?? true) return meant;
  throw new Trouble(`--data is "${given}", which is a file; give a folder.`, 2);
}

/** npm changes into the project's folder; what a person names is meant from where they stand. */
function fromWhereTheyStand(given) {
  const throughNpm = ['start', 'serve'].includes(process.env.npm_lifecycle_event ?? '');
  return path.resolve(throughNpm ? (process.env.INIT_CWD ?? ROOT) : process.cwd(), given);
}
