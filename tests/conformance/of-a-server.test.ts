import type { AddressInfo } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { WebSocketServer } from 'ws';
import { askServer, type ServerAsked } from '../../conformance/of-a-server.ts';
import { reportLines } from '../../conformance/rule.ts';
import { SERVER_RULES } from '../../conformance/server-rules.ts';
import { get, serverForTest } from '../server/running.ts';

const ASKED = { mound: 'conformance-1', runs: 'run', waitMs: 10_000 };

test('the server keeps every rule of its own protocol, and what it stored is what was acknowledged', async () => {
  const server = await serverForTest();
  const findings = await askServer({ ...ASKED, url: `${server.address.replace('http', 'ws')}/device`, token: server.token });
  expect(findings.filter(({ outcome }) => outcome !== 'kept')).toEqual([]);
  expect(findings.map(({ rule }) => rule)).toEqual(SERVER_RULES.map(({ rule }) => rule));
  expect(reportLines(findings).at(-1)).toBe(`All ${SERVER_RULES.length} rules were kept.`);
  const mounds = await get<{ mound: string }[]>(server, '/api/mounds');
  expect(mounds.map(({ mound }) => mound)).toContain(ASKED.mound);
});

test('a server that stores whatever comes is told which rules that breaks', async () => {
  const url = await serverThatAnswers((frame) => (frame.kind === 'hello' ? WELCOME : { kind: 'stored', sequence: frame.sequence }));
  expect(await brokenBy({ url })).toEqual([
    'keeps-what-is-stored', 'names-the-fault', 'settles-what-it-refused', 'refuses-the-impossible', 'survives-broken-frames', 'hello-first', 'one-hello',
    'turns-a-wrong-token-away', 'turns-another-protocol-away', 'one-device-on-a-mound', 'newest-connection-wins', 'corrects', 'welcomes-back',
  ]);
});

test('a server that forgets to answer, or answers in another language, breaks everything but its welcome', async () => {
  const silent = await askServer({ ...ASKED, token: 'x', waitMs: 50, url: await serverThatAnswers((frame) => (frame.kind === 'hello' ? WELCOME : null)) });
  expect(silent.filter(({ outcome }) => outcome === 'kept').map(({ rule }) => rule)).toEqual(['welcome']);
  expect(silent.find(({ rule }) => rule === 'stores-summary')?.seen).toBe('Awaited was stored for number 1; seen was nothing at all.');
  const foreign = await askServer({ ...ASKED, token: 'x', waitMs: 50, url: await serverThatAnswers(() => ({ ok: true })) });
  expect(foreign[0]).toMatchObject({ rule: 'welcome', outcome: 'broken', seen: 'Awaited was a welcome with settledThrough 0 and no gaps; seen was something that is no frame of the protocol: {"ok":true}.' });
});

test('an address where nobody answers is a broken rule and no crash', async () => {
  const findings = await askServer({ ...ASKED, token: 'x', url: 'ws://127.0.0.1:9/device', waitMs: 2_000 });
  expect(new Set(findings.map(({ outcome }) => outcome))).toEqual(new Set(['broken']));
  expect(findings[0]!.seen).toContain('ECONNREFUSED');
});

const WELCOME = { kind: 'welcome', protocol: 1, settledThrough: 0, gaps: [], heartbeatSeconds: 2 };

async function brokenBy(asked: Pick<ServerAsked, 'url'>): Promise<string[]> {
  const findings = await askServer({ ...ASKED, token: 'x', waitMs: 400, ...asked });
  return findings.filter(({ outcome }) => outcome === 'broken').map(({ rule }) => rule);
}

async function serverThatAnswers(answer: (frame: Record<string, unknown>) => object | null): Promise<string> {
  const server = new WebSocketServer({ host: '127.0.0.1', port: 0 });
  onTestFinished(() => {
    for (const client of server.clients) client.terminate();
    server.close();
  });
  server.on('connection', (socket) => socket.on('message', (data, isBinary) => {
    const said = isBinary ? null : frameIn(String(data));
    const answered = said === null ? null : answer(said);
    if (answered !== null) socket.send(JSON.stringify(answered));
  }));
  await new Promise((resolve) => server.once('listening', resolve));
  return `ws://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

function frameIn(text: string): Record<string, unknown> | null {
  try {
    return JSON.parse(text) as Record<string, unknown>;
  } catch {
    return null;
  }
}
