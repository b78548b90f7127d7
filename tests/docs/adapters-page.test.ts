import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { duplexPair } from 'node:stream';
import { createInterface } from 'node:readline';
import { expect, test } from 'vitest';
import { readConfig } from '../../adapters/config.ts';
import { Forwarder } from '../../adapters/forward.ts';
import { readMessage } from '../../adapters/message.ts';
import { deviceFrameSchema } from '../../core/facts/frames.ts';
import { systemClock } from '../../device/clock.ts';
import { randomFrom } from '../../simulators/random.ts';
import { DEVICE, storedIn, thrown } from '../adapters/adapting.ts';
import { folderForTest } from '../server/folder.ts';
import { serverForTest } from '../server/running.ts';
import { fromLines } from './adapter-of-the-page.ts';

const PAGE = readFileSync(new URL('../../docs/adapters.md', import.meta.url), 'utf8');
const blocks = (kind: string): string[] => [...PAGE.matchAll(new RegExp(`\`\`\`${kind}\\n([\\s\\S]*?)\`\`\``, 'g'))].map(([, text]) => text!);

test('the adapter on the page is the one that runs here', () => {
  const here = readFileSync(new URL('adapter-of-the-page.ts', import.meta.url), 'utf8');
  expect(blocks('ts')).toEqual([here.replaceAll("'../../adapters/", "'./")]);
});

test('the adapter on the page brings lines to the device door and answers each', async () => {
  const server = await serverForTest();
  const forwarder = new Forwarder({
    url: `${server.address.replace('http', 'ws')}/device`, hello: { kind: 'hello', protocol: 1, token: server.token, ...DEVICE },
    hasHeartbeats: true, clock: systemClock, chance: randomFrom(1, 'page'), print: () => {},
  });
  const [device, adapter] = duplexPair();
  const running = fromLines(adapter, forwarder);
  for (const one of [{ run: 'evening-1', kind: 'heartbeat', time: 1_900_000_000_000 }, thrown(1), thrown(1), 'nonsense', thrown(2)]) device.write(`${JSON.stringify(one)}\n`);
  device.end();
  await running;
  forwarder.close();
  adapter.end();
  const answers: unknown[] = [];
  for await (const line of createInterface({ input: device })) answers.push(JSON.parse(line));
  expect(answers).toMatchObject([{ kind: 'stored' }, { kind: 'stored' }, { kind: 'refused', code: 'not-json' }, { kind: 'stored' }]);
  expect(storedIn(server)).toEqual(['throw-measured evening-1 1 at 1900000000001', 'throw-measured evening-1 2 at 1900000000002']);
});

test('the messages and files on the page are ones that an adapter takes', () => {
  const messages = blocks('json message').map((text) => readMessage(text));
  expect(messages.map((message) => message.kind === 'frame' && deviceFrameSchema.parse(message.frame).kind)).toEqual(['throw']);
  const folder = folderForTest();
  const configs = blocks('json config').map((text) => JSON.parse(text) as { tokenFile: string; from: { passwordFile?: string } });
  const kinds = configs.map((config, index) => {
    const file = path.join(folder, `${index}.json`);
    writeFileSync(path.join(folder, 'secret'), 'a secret\n');
    writeFileSync(file, JSON.stringify({ ...config, tokenFile: 'secret', from: { ...config.from, ...(config.from.passwordFile === undefined ? {} : { passwordFile: 'secret' }) } }));
    return readConfig(file);
  });
  expect(kinds.map(({ from, hello }) => [from.kind, hello.token])).toEqual([['folder', 'a secret'], ['mqtt', 'a secret']]);
  expect(kinds[0]!.from).toEqual({ kind: 'folder', folder: path.join(folder, 'throws') });
});
