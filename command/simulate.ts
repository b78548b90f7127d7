import type { Command } from 'commander';
import { idSchema } from '../core/facts/spelling.ts';
import { ATHLETES } from '../simulators/athletes.ts';
import { FAULT_NAMES, FAULTS, type Fault } from '../simulators/faults.ts';
import type { Options } from '../simulators/options.ts';
import { Failure, wronglyAsked } from './failure.ts';
import { askedToStop } from './stop.ts';
import { say, sayJson } from './talk.ts';
import { amount, doorAddress, place, wholeNumber } from './values.ts';

const LARGEST_SEED = 2 ** 32 - 1;
const NAMES = ATHLETES.map(({ profile }) => profile.id);

interface Asked {
  readonly url: string;
  readonly tokenFile: string;
  readonly mound: string;
  readonly athlete?: string;
  readonly seed: number;
  readonly interval: number;
  readonly count?: number;
  readonly faults: readonly Fault[];
  readonly coach: boolean;
  readonly json?: true;
}

export function addSimulate(program: Command): void {
  program.command('simulate')
    .description('Throws like a person before a device, with a coach who opens the session and calls the throws, until Ctrl-C.')
    .requiredOption('--url <address>', 'the device door, such as ws://127.0.0.1:8080/device', doorAddress)
    .requiredOption('--token-file <file>', 'file with the token for devices, whose place the server prints', place('--token-file'))
    .option('--mound <id>', 'the mound', mound, 'north-1')
    .option('--athlete <id>', `only this one of ${NAMES.join(', ')}`)
    .option('--seed <n>', 'the same seed gives the same throws', wholeNumber('--seed', 0, LARGEST_SEED), 1)
    .option('--interval <seconds>', 'between two throws', amount('--interval', 'a number of seconds', 0.1, 3600), 6)
    .option('--count <n>', 'end after so many throws', wholeNumber('--count', 1, 1_000_000))
    .option('--faults <list>', 'what goes wrong now and then, with commas between, or all', faultsNamed, [])
    .option('--no-coach', 'nobody opens a session or calls a throw')
    .option('--json', 'one line of JSON when it ends, and nothing before')
    .addHelpText('after', `
Faults:
${FAULT_NAMES.map((name) => `  ${name.padEnd(10)} ${FAULTS[name]}`).join('\n')}

Examples:
  offpace simulate --url ws://127.0.0.1:8080/device --token-file data/own/device-token
  offpace simulate --url ws://127.0.0.1:8080/device --token-file data/own/device-token --mound south-2 --count 40 --faults all`)
    .action(simulate);
}

async function simulate(asked: Asked): Promise<void> {
  const stop = askedToStop();
  const options = optionsOf(asked);
  const module = await import('../simulators/simulate.ts');
  const trouble = await module.simulate(options, asked.json ? () => {} : say, stop);
  if (trouble !== null) throw new Failure(trouble);
  if (asked.json) sayJson({ mound: options.mound, seed: options.seed, count: options.count, stopped: stop.aborted });
}

function optionsOf({ url, tokenFile, mound: named, athlete, seed, interval, count, faults, coach }: Asked): Options {
  const athletes = athlete === undefined ? ATHLETES : ATHLETES.filter(({ profile }) => profile.id === athlete);
  if (athletes.length === 0) wronglyAsked(`--athlete is "${athlete}"; give one of ${NAMES.join(', ')}.`);
  return { url, tokenFile, mound: named, athletes, seed, intervalMs: 1000 * interval, count: count ?? null, faults, coach };
}

function mound(text: string): string {
  const read = idSchema.safeParse(text);
  return read.success ? text : wronglyAsked(`--mound is "${text}"; ${read.error.issues[0]!.message}.`);
}

function faultsNamed(list: string): readonly Fault[] {
  if (list === 'all') return FAULT_NAMES;
  return list.split(',').map((name) => FAULT_NAMES.find((known) => known === name.trim()) ?? wronglyAsked(`--faults names "${name.trim()}"; give all, or some of ${FAULT_NAMES.join(', ')} with commas between.`));
}
