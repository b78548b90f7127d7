import { parseArgs } from 'node:util';
import { idSchema } from '../core/facts/spelling.ts';
import { ATHLETES } from './athletes.ts';
import type { SimulatedAthlete } from './athlete.ts';
import { FAULT_NAMES, FAULTS, type Fault } from './faults.ts';

export interface Options {
  /** Of the device door. */
  readonly url: string;
  readonly tokenFile: string;
  readonly mound: string;
  /** They come to the mound in this order, again and again. */
  readonly athletes: readonly SimulatedAthlete[];
  readonly seed: number;
  readonly intervalMs: number;
  /** Throws after which the simulator ends; null: never. */
  readonly count: number | null;
  readonly faults: readonly Fault[];
  readonly coach: boolean;
}

type Read = { readonly kind: 'run'; readonly options: Options } | { readonly kind: 'help'; readonly text: string } | { readonly kind: 'wrong'; readonly sentence: string };

const HELP = `simulators/main [options]

Throws like a person, in front of a device that speaks the device protocol, with a coach who opens the session and calls the throws.

  --url ADDRESS       the device door, such as ws://127.0.0.1:8080/device
  --token-file FILE   file with the token for devices
  --mound ID          the mound                                         (north-1)
  --athlete ID        only this one: ${ATHLETES.map(({ profile }) => profile.id).join(', ')}  (all in turn)
  --seed N            the same seed gives the same throws               (1)
  --interval S        seconds between two throws                        (6)
  --count N           end after so many throws                          (never)
  --faults LIST       with commas between, or all:
${FAULT_NAMES.map((name) => `                        ${name.padEnd(10)} ${FAULTS[name]}`).join('\n')}
  --no-coach          nobody opens a session or calls a throw
  --help              this text
`;

const LARGEST_SEED = 2 ** 32 - 1;

/** What was typed, or one sentence about the first thing that is wrong with it. */
export function readOptions(args: readonly string[]): Read {
  try {
    const { values } = parseArgs({
      args: [...args],
      strict: true,
      allowPositionals: false,
      options: {
        url: { type: 'string' },
        'token-file': { type: 'string' },
        mound: { type: 'string', default: 'north-1' },
        athlete: { type: 'string' },
        seed: { type: 'string', default: '1' },
        interval: { type: 'string', default: '6' },
        count: { type: 'string' },
        faults: { type: 'string', default: '' },
        'no-coach': { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return { kind: 'help', text: HELP };
    return {
      kind: 'run',
      options: {
        url: doorAddress(values.url),
        tokenFile: values['token-file'] ?? wrong('--token-file is missing; give the file with the token for devices, whose place the server prints.'),
        mound: idSchema.safeParse(values.mound).success ? values.mound : wrong(`--mound is "${values.mound}"; ${idSchema.safeParse(values.mound).error?.issues[0]?.message}.`),
        athletes: athletesNamed(values.athlete),
        seed: wholeNumber('--seed', values.seed, 0, LARGEST_SEED),
        intervalMs: 1000 * seconds('--interval', values.interval),
        count: values.count === undefined ? null : wholeNumber('--count', values.count, 1, 1_000_000),
        faults: faultsNamed(values.faults),
        coach: !values['no-coach'],
      },
    };
  } catch (error) {
    return { kind: 'wrong', sentence: sentenceOf(error) };
  }
}

class WrongOption extends Error {}

function wrong(sentence: string): never {
  throw new WrongOption(sentence);
}

function sentenceOf(error: unknown): string {
  if (error instanceof WrongOption) return error.message;
  if (error instanceof TypeError && 'code' in error) return `${error.message.split('. ')[0]!.replace(/\.$/, '').replaceAll(/\s*\n\s*/g, ' ')}; --help lists the options.`;
  throw error;
}

function doorAddress(text: string | undefined): string {
  if (text === undefined) return wrong('--url is missing; give the address of the device door, such as ws://127.0.0.1:8080/device.');
  if (!URL.canParse(text) || !['ws:', 'wss:'].includes(new URL(text).protocol)) return wrong(`--url is "${text}"; give an address that begins with ws:// or wss://.`);
  return text;
}

function athletesNamed(id: string | undefined): readonly SimulatedAthlete[] {
  if (id === undefined) return ATHLETES;
  const found = ATHLETES.filter(({ profile }) => profile.id === id);
  return found.length > 0 ? found : wrong(`--athlete is "${id}"; give one of ${ATHLETES.map(({ profile }) => profile.id).join(', ')}.`);
}

function faultsNamed(list: string): readonly Fault[] {
  if (list === '') return [];
  if (list === 'all') return FAULT_NAMES;
  return list.split(',').map((name) => FAULT_NAMES.find((known) => known === name.trim()) ?? wrong(`--faults names "${name.trim()}"; give all, or some of ${FAULT_NAMES.join(', ')} with commas between.`));
}

function wholeNumber(name: string, text: string, smallest: number, largest: number): number {
  const value = Number(text);
  return /^\d+$/.test(text) && value >= smallest && value <= largest ? value : wrong(`${name} is "${text}"; give a whole number from ${smallest} to ${largest}.`);
}

function seconds(name: string, text: string): number {
  const value = Number(text);
  return /^\d*\.?\d+$/.test(text) && value >= 0.1 && value <= 3600 ? value : wrong(`${name} is "${text}"; give a number of seconds from 0.1 to 3600.`);
}
