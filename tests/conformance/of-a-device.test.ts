import { onTestFinished, expect, test } from 'vitest';
import type { Hello } from '../../core/facts/frames.ts';
import { DEVICE_RULES, type DeviceRule } from '../../conformance/device-rules.ts';
import { askDevice } from '../../conformance/of-a-device.ts';
import type { Finding } from '../../conformance/rule.ts';
import type { Clock } from '../../device/clock.ts';
import { DeviceClient } from '../../device/client.ts';
import { openDevice } from '../../docs/device-example.mjs';
import { randomFrom } from '../../simulators/random.ts';
import { thirtyLineDevice, type Fault } from './thirty-lines.ts';

const GIVEN = { token: 'secret', mound: 'north-1' };

test('a device written in an afternoon keeps every rule', async () => {
  expect(outcomes(await asked((url) => thirtyLineDevice(url, null)))).toEqual({ broken: [], 'not-reached': [] });
});

test('the simulated device keeps every rule', async () => {
  expect(outcomes(await asked(simulatedDevice))).toEqual({ broken: [], 'not-reached': [] });
});

test('the device program that comes with the protocol keeps every rule', async () => {
  const findings = await asked((url) => {
    const device = openDevice(url, { kind: 'hello', protocol: 1, device: 'example', run: 'run-1', ...GIVEN, sight: 'spin-only', axis: 'none', units: { distance: 'm', speed: 'km/h', movement: 'cm' } }, { pauseMs: 5, longestPauseMs: 20, say: () => {} });
    const throwing = setInterval(() => device.thrown(Date.now(), { summary: { releaseSpeed: 128 } }), 10);
    return () => {
      clearInterval(throwing);
      device.close();
    };
  });
  expect(outcomes(findings)).toEqual({ broken: [], 'not-reached': [] });
});

const BREAKS: Readonly<Record<Fault, readonly DeviceRule[]>> = {
  'no-hello': ['hello-first'],
  'new-run-each-time': ['same-run'],
  'throw-before-heartbeat': ['heartbeat-first'],
  'one-heartbeat': ['heartbeats'],
  'unknown-field': ['frames-of-the-protocol'],
  'numbers-fall': ['numbers-rise'],
  'other-content-again': ['same-content'],
  'takes-every-refusal-as-final': ['tries-again'],
  'sends-refused-again': ['forgets-what-is-refused'],
  'forgets-unanswered': ['sends-again', 'fills-gaps'],
  'ignores-welcome': ['believes-the-welcome'],
  'always-returns': ['stays-away'],
};

/** Where a rule is broken by something that does not come, the wait for it can be short. */
const SHORT: { readonly [fault in Fault]?: { waitMs?: number; beatMs?: number } } = {
  'no-hello': { waitMs: 300 }, 'unknown-field': { waitMs: 300 }, 'one-heartbeat': { beatMs: 300 }, 'takes-every-refusal-as-final': { waitMs: 1_000 }, 'forgets-unanswered': { waitMs: 1_000 },
};

for (const [fault, rules] of Object.entries(BREAKS) as [Fault, readonly DeviceRule[]][]) {
  test(`a device with the fault ${fault} breaks ${rules.join(' and ')}`, async () => {
    const findings = await asked((url) => thirtyLineDevice(url, fault), SHORT[fault]);
    expect(outcomes(findings).broken).toEqual(rules);
    expect(findings.find(({ rule }) => rule === rules[0])?.seen).toMatch(/\.$|: .+$/);
  });
}

test('a hello with a token or a mound of its own is told so', async () => {
  const findings = await asked((url) => thirtyLineDevice(url, null, { token: 'guessed', mound: 'south-9' }));
  expect(findings.find(({ rule }) => rule === 'hello-first')).toMatchObject({ outcome: 'broken', seen: 'The hello has mound "south-9" and another token; given were mound "north-1" and the token.' });
});

test('where no device comes nothing is called kept', async () => {
  const findings = await asked(() => () => {}, { waitMs: 50 });
  expect(new Set(findings.map(({ outcome }) => outcome))).toEqual(new Set(['not-reached']));
  expect(findings[0]!.seen).toBe('A connection was awaited for 0.05 s and did not come.');
});

function asked(device: (url: string) => () => void, more: { waitMs?: number; beatMs?: number } = {}): Promise<Finding[]> {
  return askDevice({ ...GIVEN, host: '127.0.0.1', port: 0, heartbeatSeconds: 0.05, waitMs: 10_000, beatMs: 10_000, quietMs: 100, ...more, onOpen: (port) => onTestFinished(device(`ws://127.0.0.1:${port}/device`)) });
}

function outcomes(findings: readonly Finding[]): { broken: string[]; 'not-reached': string[] } {
  expect(findings.map(({ rule }) => rule)).toEqual(Object.keys(DEVICE_RULES));
  const of = (outcome: Finding['outcome']): string[] => findings.flatMap((finding) => (finding.outcome === outcome ? [finding.rule] : []));
  return { broken: of('broken'), 'not-reached': of('not-reached') };
}

/** The client of the simulators, in a world where everything happens forty times as fast. */
function simulatedDevice(url: string): () => void {
  const hello: Hello = { kind: 'hello', protocol: 1, device: 'simulated', run: 'run-1', ...GIVEN, sight: 'spin-only', axis: 'none', units: { distance: 'm', speed: 'km/h', movement: 'cm' } };
  const clock: Clock = {
    nowMs: () => 0,
    after(ms, act) {
      const timer = setTimeout(act, ms / 40);
      return () => clearTimeout(timer);
    },
  };
  const client = new DeviceClient({ url, hello, clock, random: randomFrom(1, 'reconnect'), print: () => {} });
  let sequence = 0;
  const throwing = setInterval(() => client.record({ kind: 'throw', sequence: ++sequence, time: 1000 * sequence, body: { summary: { releaseSpeed: 128 } } }), 10);
  return () => {
    clearInterval(throwing);
    client.close();
  };
}
