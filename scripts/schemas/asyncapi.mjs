import { z } from 'zod';

/** What each kind of frame is, for a reader of the document; the page docs/device-protocol.md says the rest. */
const SUMMARIES = {
  hello: 'The first frame of a device.',
  heartbeat: 'The device is there, whether or not anything is thrown.',
  throw: 'One ball, measured.',
  correction: 'A throw once more, known better.',
  welcome: 'The device is let in; what of its run is settled.',
  stored: 'A number is on disk.',
  refused: 'A frame is not taken, why, and whether its number is settled by that.',
};

/**
 * The device protocol as an AsyncAPI document, seen from the server: it receives what a device says and sends the answers.
 * Payloads are written in the draft of JSON Schema that AsyncAPI reads by itself; examples are the worked frames of the page.
 * @param {{ PROTOCOL_VERSION: number, helloSchema: z.ZodObject, deviceFrameSchema: z.ZodDiscriminatedUnion, serverFrameSchema: z.ZodDiscriminatedUnion }} frames of core/facts/frames
 * @param {string} page docs/device-protocol.md
 * @returns {string}
 */
export function asyncapiDocument({ PROTOCOL_VERSION, helloSchema, deviceFrameSchema, serverFrameSchema }, page) {
  const examples = workedFrames(page);
  const fromDevice = [helloSchema, ...deviceFrameSchema.options];
  const toDevice = serverFrameSchema.options;
  const messages = Object.fromEntries([...fromDevice, ...toDevice].map((schema) => [kindOf(schema), message(schema, examples)]));
  return `${JSON.stringify({
    asyncapi: '3.0.0',
    info: {
      title: 'Device protocol of Offpace',
      version: `${PROTOCOL_VERSION}.0.0`,
      description: 'How a device sends its throws. What a schema cannot say stands in docs/device-protocol.md.',
      license: { name: 'MIT' },
    },
    defaultContentType: 'application/json',
    servers: { bullpen: { host: '127.0.0.1:8080', protocol: 'ws', description: 'The server prints its address when it starts.' } },
    channels: {
      device: {
        address: '/device',
        description: 'One WebSocket for each device; every frame is one JSON text message.',
        messages: Object.fromEntries(Object.keys(messages).map((kind) => [kind, { $ref: `#/components/messages/${kind}` }])),
      },
    },
    operations: {
      hearDevice: operation('receive', 'What a device says.', fromDevice),
      answerDevice: operation('send', 'What the server answers.', toDevice),
    },
    components: { messages },
  }, null, 2)}\n`;
}

function operation(action, summary, schemas) {
  return { action, summary, channel: { $ref: '#/channels/device' }, messages: schemas.map((schema) => ({ $ref: `#/channels/device/messages/${kindOf(schema)}` })) };
}

function message(schema, examples) {
  const kind = kindOf(schema);
  const { $schema: _, ...payload } = z.toJSONSchema(schema, { io: 'input', target: 'draft-7' });
  return { name: kind, summary: SUMMARIES[kind], payload, examples: examples.filter((frame) => frame.kind === kind).map((frame) => ({ payload: frame })) };
}

function kindOf(schema) {
  return schema.shape.kind.value;
}

/** The whole frames of the page; a fragment is shortened for reading and no frame to send. */
function workedFrames(page) {
  return [...page.matchAll(/^```json (?:device|server)\n(.*?)^```$/gms)].map(([, frame]) => JSON.parse(frame));
}
