import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { connectAsync, type MqttClient } from 'mqtt';
import { expect, onTestFinished, test } from 'vitest';
import { folderForTest } from '../server/folder.ts';
import { serverForTest } from '../server/running.ts';
import { adapt, storedIn, thrown } from './adapting.ts';
import { brokerForTest, type Broker } from './broker.ts';

const TOPIC = 'mounds/north-1';

/** A device that speaks MQTT, and what it is answered. */
async function deviceAt({ address }: Broker) {
  const client: MqttClient = await connectAsync(address, { reconnectPeriod: 0 });
  onTestFinished(() => client.endAsync(true));
  const answers: Record<string, unknown>[] = [];
  let look = (): void => {};
  client.on('message', (_topic, payload) => {
    answers.push(JSON.parse(payload.toString()) as Record<string, unknown>);
    look();
  });
  await client.subscribeAsync(`${TOPIC}/answers`, { qos: 1 });
  return {
    say: (message: unknown) => client.publishAsync(TOPIC, typeof message === 'string' ? message : JSON.stringify(message), { qos: 1 }),
    beat: (time: number) => client.publishAsync(TOPIC, JSON.stringify({ run: 'evening-1', kind: 'heartbeat', time })),
    /** The first so many answers, once they are there, in short. */
    async answers(count: number): Promise<string[]> {
      while (answers.length < count) await new Promise<void>((resolve) => (look = resolve));
      return answers.map(({ kind, sequence, code, path }) => [kind, sequence, code, path].filter((word) => word !== undefined).join(' '));
    },
  };
}

test('throws, corrections and what is wrong come over MQTT to the device door, each once, in order, with the time of the device, and are answered', async () => {
  const [broker, server] = await Promise.all([brokerForTest(), serverForTest()]);
  const adapter = adapt(server, { kind: 'mqtt', broker: broker.address, topic: TOPIC });
  await adapter.said(/^adapter: reads mounds\/north-1 at mqtt:/);
  const device = await deviceAt(broker);
  const said = [
    thrown(1), thrown(2), thrown(2), { ...thrown(3), kind: 'correction', corrects: { sequence: 1 } },
    'no JSON', thrown(4, { run: undefined }), thrown(0), thrown(5, { body: { summary: { releaseSpeed: 400 } } }), { ...thrown(6), kind: 'correction', corrects: { sequence: 99 } },
    thrown(1, { run: 'evening-2' }),
  ];
  for (const one of said) await device.say(one);
  expect(await device.answers(said.length)).toEqual([
    'stored 1', 'stored 2', 'stored 2', 'stored 3',
    'refused  not-json ', 'refused  malformed run', 'refused  malformed sequence', 'refused 5 impossible body.summary.releaseSpeed', 'refused 6 nothing-to-correct corrects',
    'stored 1',
  ]);
  expect(storedIn(server)).toEqual([
    'throw-measured evening-1 1 at 1900000000001', 'throw-measured evening-1 2 at 1900000000002', 'throw-corrected evening-1 3 at 1900000000003', 'throw-measured evening-2 1 at 1900000000001',
  ]);
});

test('what is thrown while the server is away, and while the adapter is, comes once and in order when they are back', async () => {
  const [broker, server] = await Promise.all([brokerForTest(), serverForTest()]);
  const { dataFolder, port } = server;
  const first = adapt(server, { kind: 'mqtt', broker: broker.address, topic: TOPIC });
  await first.said(/reads/);
  const device = await deviceAt(broker);
  await device.say(thrown(1));
  await device.answers(1);
  await server.close();
  await first.said(/the connection broke/);
  for (const sequence of [2, 3]) await device.say(thrown(sequence));
  // It leaves with a throw in its hands that nobody has answered.
  await first.stop();
  await device.say(thrown(4));
  const second = adapt(server, { kind: 'mqtt', broker: broker.address, topic: TOPIC });
  await second.said(/no connection/);
  const again = await serverForTest({ dataFolder, port });
  expect(await device.answers(4)).toEqual(['stored 1', 'stored 2', 'stored 3', 'stored 4']);
  expect(storedIn(again).map((line) => line.split(' ')[2])).toEqual(['1', '2', '3', '4']);
});

function fileWith(text: string): string {
  const file = path.join(folderForTest(), 'token');
  writeFileSync(file, text);
  return file;
}

test.each([
  ['a broker that lets nobody in', false, null, /^The broker mqtt:\S+ refuses this adapter \(.+\); check username and password\.$/],
  ['a server that does not know the token', true, 'another token', /^This token is not known here/],
])('%s ends the adapter with one sentence', async (_, letsIn, token, sentence) => {
  const [broker, server] = await Promise.all([brokerForTest({ letsIn }), serverForTest()]);
  const adapter = adapt(server, { kind: 'mqtt', broker: broker.address, topic: TOPIC }, token === null ? {} : { tokenFile: fileWith(token) });
  if (letsIn) {
    await adapter.said(/reads/);
    await (await deviceAt(broker)).beat(1_900_000_000_000);
    await (await deviceAt(broker)).say(thrown(1));
  }
  await expect(adapter.ended).rejects.toThrow(sentence);
});
