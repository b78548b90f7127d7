import Database from 'libsql';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { DeviceClient } from './device-client.ts';
import { folderForTest } from './folder.ts';
import { forkServer, readyServer } from './forked.ts';
import { summary } from './frames.ts';

function storedNumbers(dataFolder: string): number[] {
  const database = new Database(path.join(dataFolder, 'facts.db'));
  const rows = database.prepare("SELECT json_extract(said, '$.source.sequence') AS sequence FROM facts ORDER BY place").all() as { sequence: number }[];
  database.close();
  return rows.map(({ sequence }) => sequence);
}

test.each(['SIGTERM', 'SIGINT'] as const)('%s ends the server cleanly, with devices connected', async (signal) => {
  const data = folderForTest();
  const server = await readyServer(['--port', '0', '--data', data]);
  const { client } = await DeviceClient.greet(server.address, readFileSync(server.tokenFile, 'utf8').trim());
  await client.ask({ kind: 'throw', sequence: 1, time: 1000, body: summary() });
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
  [['--host', '0.0.0.0'], /^Listening on 0\.0\.0\.0 lets other machines in, so coaches need a passphrase; .*--passphrase-file\.$/],
  [['--host', '0.0.0.0', '--passphrase-file', 'package.json'], /^The passphrase in \S+\/package\.json is too short; give at least 12 characters, such as four words that do not belong together\.$/],
  [['--host', '0.0.0.0', '--passphrase-file', 'no-such-file'], /^The file \S+\/no-such-file with the passphrase cannot be read \(ENOENT\)/],
  [['--host', '203.0.113.7', '--passphrase-file', 'DEVELOPERS.md'], /^203\.0\.113\.7 is no address of this machine/],
])('%j is one sentence and exit code 1', async (args, sentence) => {
  const server = forkServer(['--data', folderForTest(), '--port', '0', ...args]);
  const word = await server.firstWord;
  expect(word).toMatchObject({ kind: 'failed', sentence: typeof sentence === 'string' ? sentence : expect.stringMatching(sentence) });
  const { code, errors } = await server.ended;
  expect([code, errors.trim().split('\n').length]).toEqual([1, 1]);
});

test('options that are typed wrongly are told to who started it, with exit code 2', async () => {
  const server = forkServer(['--port', 'high']);
  const sentence = '--port is "high"; give a whole number from 0 to 65535.';
  expect(await server.firstWord).toEqual({ kind: 'failed', sentence });
  expect(await server.ended).toEqual({ code: 2, signal: null, errors: `${sentence}\n` });
});
