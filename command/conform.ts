import type { Command } from 'commander';
import { reportLines, type Finding } from '../conformance/rule.ts';
import { exposed, inAddress } from '../server/access/addresses.ts';
import { systemClock } from '../server/clock.ts';
import { whyNotListening } from '../server/listening.ts';
import { EXIT, Failure, FoundWrong, wronglyAsked } from './failure.ts';
import { aborted, askedToStop } from './stop.ts';
import { progress, remark, say, sayJson } from './talk.ts';
import { address, amount, doorAddress, place, tokenIn, wholeNumber } from './values.ts';

/** A device that keeps the rhythm of its heartbeats may still be late once. */
const BEATS_WAITED = 3;

export function addConform(program: Command): void {
  const conform = program.command('conform').description('Holds a device program or a server against the device protocol, rule by rule.');
  addDevice(conform);
  addServer(conform);
}

interface DeviceAsked {
  readonly host: string;
  readonly listen: number;
  readonly mound: string;
  readonly token: string;
  readonly heartbeat: number;
  readonly wait: number;
  readonly quiet: number;
  readonly json?: true;
}

function addDevice(conform: Command): void {
  conform.command('device')
    .description('Plays the server against a device program that throws by itself: at least ten throws.')
    .option('--listen <port>', 'port of this machine where the device shall connect, 0 for any free one', wholeNumber('--listen', 0, 65_535), 9000)
    .option('--host <address>', 'address of this machine to listen on: 0.0.0.0 where the device is another machine', address, '127.0.0.1')
    .option('--mound <id>', 'the mound that the device is given', 'conformance-1')
    .option('--token <token>', 'the token that the device is given', 'conformance')
    .option('--heartbeat <seconds>', 'the rhythm that the welcome asks for', amount('--heartbeat', 'a number of seconds', 0.05, 60), 2)
    .option('--wait <seconds>', 'how long the next throw, or the next connection, may take', amount('--wait', 'a number of seconds', 0.05, 3600), 120)
    .option('--quiet <seconds>', 'how long a device that was sent away is watched', amount('--quiet', 'a number of seconds', 0.05, 600), 10)
    .option('--json', 'the findings as one line of JSON')
    .addHelpText('after', `
Exit code 1 when a rule was broken or could not be looked at.

Examples:
  offpace conform device --listen 9000
  offpace conform device --listen 0 --wait 30 --json
  offpace conform device --host 0.0.0.0`)
    .action(async ({ listen, heartbeat, wait, quiet, json, ...given }: DeviceAsked) => {
      const { askDevice } = await import('../conformance/of-a-device.ts');
      const onOpen = (port: number): void => remark(`Start the device now: address ${doorsAt(given.host, port).join(' or ')}, mound ${given.mound}, token ${given.token}.`);
      const asked = { ...given, port: listen, heartbeatSeconds: heartbeat, waitMs: 1000 * wait, beatMs: 1000 * heartbeat * BEATS_WAITED, quietMs: 1000 * quiet, onOpen };
      const asking = askDevice(asked).catch((error: NodeJS.ErrnoException) => {
        throw error.syscall === 'listen' ? new Failure(whyNotListening(error, listen, given.host, '--listen')) : error;
      });
      report(await unlessBrokenOff(asking), json);
    });
}

/** Under which addresses a device finds the door. */
function doorsAt(host: string, port: number): string[] {
  const others = exposed({ host, tls: false, authority: null }, port);
  return others === null ? [`ws://${inAddress(host)}:${port}/device`] : others.addresses.map((one) => `${one.replace('http', 'ws')}/device`);
}

interface ServerAsked {
  readonly token?: string;
  readonly tokenFile?: string;
  readonly mound: string;
  readonly wait: number;
  readonly json?: true;
}

function addServer(conform: Command): void {
  conform.command('server')
    .description('Plays a device against a server. Some dozen throws are stored on the mound, so it should be one of its own.')
    .argument('<address>', 'the device door, such as ws://127.0.0.1:8080/device', doorAddress)
    .option('--token-file <file>', 'file with the token for devices', place('--token-file'))
    .option('--token <token>', 'the token itself')
    .option('--mound <id>', 'the mound', 'conformance-1')
    .option('--wait <seconds>', 'how long an answer may take', amount('--wait', 'a number of seconds', 0.05, 600), 10)
    .option('--json', 'the findings as one line of JSON')
    .addHelpText('after', `
Exit code 1 when a rule was broken.

Example:
  offpace conform server ws://127.0.0.1:8080/device --token-file data/own/device-token`)
    .action(async (url: string, { token, tokenFile, mound, wait, json }: ServerAsked) => {
      const [{ askServer }, { SERVER_RULES }] = await Promise.all([import('../conformance/of-a-server.ts'), import('../conformance/server-rules.ts')]);
      const bar = progress(SERVER_RULES.length, 'rules');
      const runs = `conform-${systemClock.nowMs().toString(36)}`;
      const findings = await unlessBrokenOff(askServer({ url, token: tokenOf(token, tokenFile), mound, runs, waitMs: 1000 * wait, onRule: bar.at }));
      bar.end();
      report(findings, json);
    });
}

function tokenOf(token: string | undefined, file: string | undefined): string {
  if ((token === undefined) === (file === undefined)) return wronglyAsked('Give the token for devices, either with --token-file or with --token.');
  return file === undefined ? token! : tokenIn(file);
}

async function unlessBrokenOff(asking: Promise<Finding[]>): Promise<Finding[]> {
  const stop = askedToStop();
  const findings = await Promise.race([asking, aborted(stop).then(() => null)]);
  if (findings === null) throw new Failure('Broken off.', EXIT.brokenOff);
  return findings;
}

function report(findings: readonly Finding[], json: true | undefined): void {
  if (json) sayJson(findings);
  else for (const line of reportLines(findings)) say(line);
  if (findings.some(({ outcome }) => outcome !== 'kept')) throw new FoundWrong();
}
