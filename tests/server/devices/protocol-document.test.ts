import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { impossibility } from '../../../core/facts/bounds.ts';
import { deviceFrameSchema, HEARTBEAT_SECONDS, helloSchema, LARGEST_FRAME_BYTES, PROTOCOL_VERSION, serverFrameSchema } from '../../../core/facts/frames.ts';
import { STALE_AFTER_SECONDS } from '../../../core/facts/heartbeat.ts';
import { backoffMs } from '../../../device/backoff.ts';
import { ANSWER_WITHIN_MS, SEND_AGAIN_AFTER_MS, TAKEN_OVER } from '../../../device/client.ts';
import { LATE_MS, MOST_REFUSALS_BEFORE_HELLO } from '../../../server/devices/connection.ts';
import { HELLO_WITHIN_MS, LARGEST_READ_BYTES, SILENT_FOR_MS } from '../../../server/devices/door.ts';
import { DeviceClient } from '../device-client.ts';
import { serverForTest } from '../running.ts';

const text = readFileSync(new URL('../../../docs/device-protocol.md', import.meta.url), 'utf8');
const blocks = [...text.matchAll(/```json (device|server|fragment)\n([\s\S]*?)```/g)].map(([, side, json]) => ({ side, frame: JSON.parse(json!) as unknown }));
const sent = z.union([helloSchema, deviceFrameSchema]);

test('every frame of the protocol document is one that the door takes or says', () => {
  const complete = blocks.filter(({ side }) => side !== 'fragment');
  expect(complete.length).toBeGreaterThanOrEqual(8);
  for (const { side, frame } of complete) expect(() => (side === 'device' ? sent : serverFrameSchema).parse(frame)).not.toThrow();
});

test('every throw of the protocol document can happen on a mound, in the units of its hello', () => {
  const frames = blocks.filter(({ side }) => side === 'device').map(({ frame }) => sent.parse(frame));
  const hello = frames.find((frame) => frame.kind === 'hello')!;
  const bodies = frames.flatMap((frame) => ('body' in frame ? [frame.body] : []));
  expect(bodies.map((body) => ['path', 'constant', 'summary'].find((shape) => shape in body))).toEqual(['path', 'constant', 'summary', 'summary']);
  for (const body of bodies) expect(impossibility(body, hello.units, { stage: 'mound', distanceM: 18.4404 })).toBeNull();
});

test('every frame of a device in the protocol document, sent as it stands to a real door, is let in and stored', async () => {
  const server = await serverForTest();
  const client = await DeviceClient.connect(server.address);
  const frames = blocks.filter(({ side }) => side === 'device').map(({ frame }) => sent.parse(frame));
  const answers: unknown[] = [];
  for (const frame of frames) {
    if (frame.kind === 'heartbeat') client.send(frame);
    else answers.push(await client.ask(frame.kind === 'hello' ? { ...frame, token: server.token } : frame));
  }
  const stored = frames.flatMap((frame) => ('sequence' in frame ? [{ kind: 'stored', sequence: frame.sequence }] : []));
  expect(answers).toEqual([{ kind: 'welcome', protocol: PROTOCOL_VERSION, settledThrough: 0, gaps: [], heartbeatSeconds: HEARTBEAT_SECONDS }, ...stored]);
  expect(stored.length).toBeGreaterThanOrEqual(4);
});

/** The first cells of the table whose head begins with these words. */
function rows(head: string): string[][] {
  const [, table = ''] = text.split(`| ${head} |`);
  return table.split('\n\n')[0]!.split('\n').slice(2).map((line) => line.split('|').slice(1, -1).map((cell) => cell.trim()));
}

test('the document says what to do about every code that the door can answer, and about no other', () => {
  const refused = serverFrameSchema.options.find((option) => option.shape.kind.value === 'refused')!;
  const codes = (refused.shape as { code: z.ZodEnum<Record<string, string>> }).code.options;
  expect(codes.length).toBeGreaterThan(10);
  expect(rows('code').map(([code]) => code).toSorted()).toEqual(codes.map((code) => `\`${code}\``).toSorted());
  for (const [, happened, act] of rows('code')) expect([happened!.length, act!.length].every((length) => length > 15)).toBe(true);
});

test('every code of the document is answered somewhere in the door or the log behind it', () => {
  const sources = ['devices', 'log'].flatMap((room) => readdirSync(new URL(`../../../server/${room}/`, import.meta.url)).filter((name) => name.endsWith('.ts')).map((name) => readFileSync(new URL(`../../../server/${room}/${name}`, import.meta.url), 'utf8')));
  expect(rows('code').map(([code]) => code!.replaceAll('`', "'")).filter((code) => !sources.some((source) => source.includes(code)))).toEqual([]);
});

test('the times, sizes and numbers of the document are those of the code', () => {
  const time = (what: string): string => rows('what').find(([cell]) => cell === what)![1]!;
  expect(time('hello after the connection is open')).toBe(`within ${HELLO_WITHIN_MS / 1000} seconds`);
  expect(time('heartbeat')).toMatch(new RegExp(`^every ${HEARTBEAT_SECONDS} seconds`));
  expect(time('screens show the device as silent')).toBe(`after ${STALE_AFTER_SECONDS} seconds without any frame`);
  expect(time('the server lets go of a silent connection')).toBe(`after ${SILENT_FOR_MS / 1000} seconds without any frame`);
  expect(time('a throw is late')).toMatch(new RegExp(`^more than ${LATE_MS / 1000} seconds older`));
  expect(time('no answer to a throw')).toMatch(new RegExp(`^after ${ANSWER_WITHIN_MS / 1000} seconds`));
  expect(time('refused with `"final": false`')).toContain(`a pause of ${SEND_AGAIN_AFTER_MS / 1000} seconds`);
  const middle = { uniform: () => 0.5 };
  expect(time('connect again')).toContain(`after ${backoffMs(1, middle) / 1000} seconds, then each time twice as long, up to ${backoffMs(50, middle) / 1000} seconds, each spread by ±20 %`);
  expect(backoffMs(1, { uniform: () => 0 }) / backoffMs(1, middle)).toBeCloseTo(0.8, 9);
  expect(rows('close code').map(([code]) => code)).toEqual(['1001', '1008', '1009', '1013', String(TAKEN_OVER), 'none (1006)']);
  expect(text).toContain(`within ${HELLO_WITHIN_MS / 1000} seconds or after ${MOST_REFUSALS_BEFORE_HELLO} other frames`);
  expect(text).toContain(`beyond ${LARGEST_FRAME_BYTES / 1024} KiB; beyond ${LARGEST_READ_BYTES / 1024 / 1024} MiB the connection`);
  expect(text).toContain(`This is version ${PROTOCOL_VERSION} of the protocol.`);
});
