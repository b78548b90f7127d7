import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { impossibility } from '../../../core/facts/bounds.ts';
import { deviceFrameSchema, helloSchema, serverFrameSchema } from '../../../core/facts/frames.ts';

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
  expect(bodies.map((body) => Object.keys(body)[0])).toEqual(['constant', 'summary', 'summary']);
  for (const body of bodies) expect(impossibility(body, hello.units, { stage: 'mound', distanceM: 18.4404 })).toBeNull();
});

test('the document says what to do about every code that the door can answer', () => {
  const refused = serverFrameSchema.options.find((option) => option.shape.kind.value === 'refused')!;
  const codes = (refused.shape as { code: z.ZodEnum<Record<string, string>> }).code.options;
  expect(codes.length).toBeGreaterThan(10);
  for (const code of codes) expect(text).toContain(`| \`${code}\` |`);
});
