import { readdirSync, readFileSync } from 'node:fs';
import asyncapiSchema from '@asyncapi/specs/schemas/3.0.0-without-$id.json' with { type: 'json' };
import { Ajv, type ValidateFunction } from 'ajv';
import formats from 'ajv-formats';
import { expect, test } from 'vitest';
import * as frames from '../../core/facts/frames.ts';
import { schemaDocuments } from '../../scripts/schemas/documents.mjs';

const FOLDER = new URL('../../docs/device-schemas/', import.meta.url);
const PAGE = readFileSync(new URL('../../docs/device-protocol.md', import.meta.url), 'utf8');

interface Document {
  asyncapi: string;
  operations: Record<string, { messages: { $ref: string }[] }>;
  channels: { device: { messages: Record<string, { $ref: string }> } };
  components: { messages: Record<string, { payload: object; examples: { payload: unknown }[] }> };
}

test('the schemas that a device maker reads are the ones that the device door checks with; npm run schemas writes them', () => {
  const documents = schemaDocuments(frames, PAGE);
  expect(readdirSync(FOLDER).toSorted()).toEqual([...documents.keys()].toSorted());
  for (const [name, text] of documents) {
    expect(readFileSync(new URL(name, FOLDER), 'utf8')).toBe(text);
  }
});

test('the AsyncAPI document is one by the schema of AsyncAPI 3, which refuses it when something is wrong', () => {
  const isAsyncapi = judge(asyncapiSchema);
  expect({ valid: isAsyncapi(written()), errors: isAsyncapi.errors }).toEqual({ valid: true, errors: null });
  expect(isAsyncapi({ ...written(), operations: { hearDevice: { action: 'listen' } } })).toBe(false);
  expect(isAsyncapi({ ...written(), asyncapi: '2.0.0' })).toBe(false);
});

test('every reference of the AsyncAPI document leads to a message, and every message has an operation', () => {
  const { channels, components, operations } = written();
  const named = Object.values(operations).flatMap(({ messages }) => messages.map(({ $ref }) => $ref.replace('#/channels/device/messages/', '')));
  expect(named.toSorted()).toEqual(Object.keys(components.messages).toSorted());
  expect(Object.entries(channels.device.messages).map(([kind, { $ref }]) => $ref === `#/components/messages/${kind}`)).toEqual(named.map(() => true));
});

test('each kind of frame has a worked example, which its schema takes and which no other would', () => {
  const { messages } = written().components;
  for (const [kind, { payload, examples }] of Object.entries(messages)) {
    const takes = judge(payload);
    expect(examples.length, `examples of ${kind}`).toBeGreaterThan(0);
    for (const { payload: frame } of examples) expect(takes(frame), `${kind}: ${JSON.stringify(takes.errors)}`).toBe(true);
    for (const [other, { examples: others }] of Object.entries(messages)) if (other !== kind) expect(takes(others[0]!.payload), `${other} as ${kind}`).toBe(false);
  }
});

function written(): Document {
  return JSON.parse(readFileSync(new URL('asyncapi.json', FOLDER), 'utf8')) as Document;
}

function judge(schema: object): ValidateFunction {
  const ajv = new Ajv({ strict: false, allErrors: false });
  formats.default(ajv);
  return ajv.compile(schema);
}
