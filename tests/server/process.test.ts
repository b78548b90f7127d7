import Database from 'libsql';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { DeviceClient } from './device-client.ts';
import { folderForTest } from './folder.ts';
import { forkServer, readyServer } from './forked.ts';
import { path as pathBody, summary } from './frames.ts';

const frame = (sequence: number) => ({ kind: 'throw', sequence, time: 1000 * sequence, body: sequence % 5 === 0 ? pathBody() : summary(70 + (sequence % 25)) });

/** Throws on their way at any time: sent and not yet answered. */
const IN_FLIGHT = 64;

function storedNumbers(dataFolder: string): number[] {
  const database = new Database(path.join(dataFolder, 'facts.db'));
  const rows = database.prepare("SELECT json_extract(said, '$.source.sequence') AS sequence FROM facts ORDER BY place").all() as { sequence: number }[];
  database.close();
  return rows.map(({ sequence }) => sequence);
}

test('a server killed in mid-stream keeps every throw that it acknowledged, exactly once, and takes up where it was', async () => {
  const data = folderForTest();
  const acknowledged = new Set<number>();
  let sent = 0;
  for (const killAfter of [40, 150, 301]) {
    const server = await readyServer(['--port', '0', '--data', data]);
    const token = readFileSync(server.tokenFile, 'utf8').trim();
    const { client, welcome } = await DeviceClient.greet(server.address, token);
    if (welcome.kind !== 'welcome') throw new Error('no welcome');
    expect(welcome.gaps).toEqual([]);
    expect(welcome.settledThrough).toBeGreaterThanOrEqual(Math.max(0, ...acknowledged));
    for (let sequence = welcome.settledThrough + 1; sequence <= sent; sequence += 1) client.send(frame(sequence));
    while (sent < welcome.settledThrough + IN_FLIGHT) client.send(frame(++sent));
    for (let answered = 0; answered < killAfter; answered += 1) {
      const answer = await client.next();
      if (answer.kind !== 'stored') throw new Error(JSON.stringify(answer));
      acknowledged.add(answer.sequence);
      client.send(frame(++sent));
    }
    server.child.kill('SIGKILL');
    expect(await server.ended).toMatchObject({ signal: 'SIGKILL' });
    await client.closed;
  }
  const server = await readyServer(['--port', '0', '--data', data]);
  const { client, welcome } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  const from = (welcome as { settledThrough: number }).settledThrough + 1;
  for (let sequence = from; sequence <= sent; sequence += 1) client.send(frame(sequence));
  for (let sequence = from; sequence <= sent; sequence += 1) expect(await client.next()).toEqual({ kind: 'stored', sequence });
  server.child.kill('SIGTERM');
  expect(await server.ended).toEqual({ code: 0, signal: null, errors: '' });
  expect(acknowledged.size).toBeGreaterThanOrEqual(301);
  expect(storedNumbers(data)).toEqual(Array.from({ length: sent }, (_, index) => index + 1));
});

test.each(['SIGTERM', 'SIGINT'] as const)('%s ends the server cleanly, with devices connected', async (signal) => {
  const data = folderForTest();
  const server = await readyServer(['--port', '0', '--data', data]);
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  await client.ask(frame(1));
  server.child.kill(signal);
  expect(await client.closed).toBe(1001);
  expect(await server.ended).toEqual({ code: 0, signal: null, errors: '' });
  expect(storedNumbers(data)).toEqual([1]);
});

test('the server ends when the program that started it is gone', async () => {
  const server = await readyServer(['--port', '0', '--data', folderForTest()]);
  server.child.disconnect();
  expect(await server.ended).toMatchObject({ code: 0, errors: '' });
});

test('a taken port is one sentence and exit code 1', async () => {
  const first = await readyServer(['--port', '0', '--data', folderForTest()]);
  const { port } = new URL(first.address);
  const second = forkServer(['--port', port, '--data', folderForTest()]);
  const sentence = `Port ${port} on 127.0.0.1 is taken by another program; stop that one or give another port with --port.`;
  expect(await second.firstWord).toEqual({ kind: 'failed', sentence });
  expect(await second.ended).toEqual({ code: 1, signal: null, errors: `${sentence}\n` });
});

test('a data folder that another server uses is one sentence and exit code 1', async () => {
  const data = folderForTest();
  await readyServer(['--port', '0', '--data', data]);
  const second = forkServer(['--port', '0', '--data', data]);
  expect(await second.firstWord).toEqual({ kind: 'failed', sentence: `Another Offpace is using ${data}; stop that one, or give another folder with --data.` });
  expect((await second.ended).code).toBe(1);
});

test.each([
  [['--port', 'high'], '--port is "high"; give a whole number from 0 to 65535.'],
  [['--prot', '1'], /^Unknown option '--prot'.*--port, --host, --data and --passphrase-file\.$/],
  [['--host', '0.0.0.0'], /^Listening on 0\.0\.0\.0 lets other machines in, so coaches need a passphrase; .*--passphrase-file\.$/],
  [['--host', '0.0.0.0', '--passphrase-file', 'package.json'], 'The passphrase in package.json is too short; give at least 12 characters, such as four words that do not belong together.'],
  [['--host', '0.0.0.0', '--passphrase-file', 'no-such-file'], /^The file no-such-file with the passphrase cannot be read \(ENOENT\)/],
  [['--host', '203.0.113.7', '--passphrase-file', 'DEVELOPERS.md'], /^203\.0\.113\.7 is no address of this machine/],
])('%j is one sentence and exit code 1', async (args, sentence) => {
  const server = forkServer(['--data', folderForTest(), '--port', '0', ...args]);
  const word = await server.firstWord;
  expect(word).toMatchObject({ kind: 'failed', sentence: typeof sentence === 'string' ? sentence : expect.stringMatching(sentence) });
  const { code, errors } = await server.ended;
  expect([code, errors.trim().split('\n').length]).toEqual([1, 1]);
});
