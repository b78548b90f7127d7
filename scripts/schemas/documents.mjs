import { z } from 'zod';
import { asyncapiDocument } from './asyncapi.mjs';

/**
 * The JSON Schemas of the device protocol and the AsyncAPI document over them, as they stand in docs/device-schemas.
 * What a schema cannot say (one of three shapes, rising times) the door checks and docs/device-protocol.md tells.
 * @param {{ helloSchema: z.ZodType, deviceFrameSchema: z.ZodType, serverFrameSchema: z.ZodType }} frames of core/facts/frames
 * @param {string} page docs/device-protocol.md, whose worked frames are the examples
 * @returns {Map<string, string>} file name → its text
 */
export function schemaDocuments(frames, page) {
  const { helloSchema, deviceFrameSchema, serverFrameSchema } = frames;
  return new Map([
    ['hello.json', text('The first frame of a device', helloSchema)],
    ['device-frame.json', text('Every frame of a device after its hello', deviceFrameSchema)],
    ['server-frame.json', text('Every answer to a device', serverFrameSchema)],
    ['asyncapi.json', asyncapiDocument(frames, page)],
  ]);
}

function text(title, schema) {
  const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input' });
  return `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`;
}
