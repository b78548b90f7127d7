import { expect, onTestFinished, test } from 'vitest';
import { DEVICE_RULES } from '../../conformance/device-rules.ts';
import { SERVER_RULES } from '../../conformance/server-rules.ts';
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

/** Starts the device when the command says where. */
async function deviceHeld(fault: Fault | null): Promise<{ code: number; findings: { rule: string; outcome: string }[] }> {
  const begin = (remark: string): void => {
    const url = /address (\S+),/.exec(remark)?.[1];
    if (url !== undefined) onTestFinished(thirtyLineDevice(url, fault));
  };
  const { code, out } = await typedHearing(begin, 'conform', 'device', '--listen', '0', '--heartbeat', '0.05', '--wait', '10', '--quiet', '0.1', '--token', 'secret', '--mound', 'north-1', '--json');
  return { code, findings: JSON.parse(out) as { rule: string; outcome: string }[] };
}
