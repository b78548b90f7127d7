import { expect, onTestFinished, test } from 'vitest';
import { DEVICE_RULES } from '../../conformance/device-rules.ts';
import { SERVER_RULES } from '../../conformance/server-rules.ts';
import { exposed } from '../../server/access/addresses.ts';
import { thirtyLineDevice, type Fault } from '../conformance/thirty-lines.ts';
import { serverForTest } from '../server/running.ts';
import { typed, typedHearing } from './typed.ts';

test('a server that keeps the protocol is told so, with exit code 0', async () => {
  const server = await serverForTest();
  const { code, out, err } = await typed('conform', 'server', `${server.address.replace('http', 'ws')}/device`, '--token-file', server.tokenFile);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out.match(/^kept/gm)).toHaveLength(SERVER_RULES.length);
  expect(out).toMatch(/\nAll \d+ rules were kept\.\n$/);
});

test('where no server answers every rule is broken, and the exit code is 1', async () => {
  const { code, out } = await typed('conform', 'server', 'ws://127.0.0.1:9/device', '--token', 'any', '--json');
  expect(code).toBe(1);
  expect((JSON.parse(out) as { outcome: string }[]).map(({ outcome }) => outcome)).toEqual(SERVER_RULES.map(() => 'broken'));
});

test.each<[Fault | null, number, string[]]>([[null, 0, []], ['throw-before-heartbeat', 1, ['heartbeat-first']]])('a device with the fault %s ends the command with %i', async (fault, exitCode, rules) => {
  const { code, findings } = await deviceHeld(fault);
  expect(code).toBe(exitCode);
  expect(findings.map(({ rule }) => rule)).toEqual(Object.keys(DEVICE_RULES));
  expect(findings.filter(({ outcome }) => outcome !== 'kept').map(({ rule }) => rule)).toEqual(rules);
});

test('a device on another machine is told the addresses under which that finds this one', async () => {
  const told: string[] = [];
  const { code } = await deviceHeld(null, ['--host', '0.0.0.0'], told);
  expect(code).toBe(0);
  const port = Number(new URL(told[0]!).port);
  expect(told).toEqual(exposed({ host: '0.0.0.0', tls: false, authority: null }, port)!.addresses.map((one) => `${one.replace('http', 'ws')}/device`));
});

test('where the door cannot open, why and what to give instead is said in one sentence', async () => {
  const server = await serverForTest();
  const { code, err } = await typed('conform', 'device', '--listen', new URL(server.address).port);
  expect({ code, err }).toEqual({ code: 1, err: `Port ${new URL(server.address).port} on 127.0.0.1 is taken by another program; stop that one or give another port with --listen.\n` });
});

/** Starts the device, on this machine, when the command says where. */
async function deviceHeld(fault: Fault | null, more: readonly string[] = [], told: string[] = []): Promise<{ code: number; findings: { rule: string; outcome: string }[] }> {
  const begin = (remark: string): void => {
    const addresses = remark.match(/ws:\/\/[^\s,]+/g);
    if (addresses === null) return;
    told.push(...addresses);
    onTestFinished(thirtyLineDevice(`ws://127.0.0.1:${new URL(addresses[0]!).port}/device`, fault));
  };
  const { code, out } = await typedHearing(begin, 'conform', 'device', ...more, '--listen', '0', '--heartbeat', '0.05', '--wait', '10', '--quiet', '0.1', '--token', 'secret', '--mound', 'north-1', '--json');
  return { code, findings: JSON.parse(out) as { rule: string; outcome: string }[] };
}
