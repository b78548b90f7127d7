import { z } from 'zod';
import { axisSchema, idSchema, sightSchema } from './spelling.ts';

/** The version of the device protocol spoken here; docs/device-protocol.md describes it. */
export const PROTOCOL_VERSION = 1;
export const LARGEST_FRAME_BYTES = 64 * 1024;
export const HEARTBEAT_SECONDS = 2;

const finite = z.number();
const vectorSchema = z.tuple([finite, finite, finite]);
const sequenceSchema = z.int().min(1).max(Number.MAX_SAFE_INTEGER);

const unitsSchema = z.strictObject({
  distance: z.enum(['m', 'ft']).describe('Of positions, extension and plate place. Vectors of velocity and acceleration are in this unit per second and per second squared.'),
  speed: z.enum(['m/s', 'km/h', 'mph', 'ft/s']).describe('Of releaseSpeed, plateSpeed and armSpeed.'),
  movement: z.enum(['m', 'cm', 'in']).describe('Of verticalBreak and horizontalBreak.'),
});

const standardErrorsSchema = z.strictObject({
  position: z.number().positive().optional().describe('Of one coordinate of one sample, in units.distance.'),
  speed: z.number().positive().optional().describe('Of a release speed, in units.speed.'),
  movement: z.number().positive().optional().describe('Of a break, in units.movement.'),
  spinRate: z.number().positive().optional().describe('Of a spin rate, in rpm.'),
  tilt: z.number().positive().optional().describe('Of a tilt, in degrees.'),
  axisBias: z.number().min(0).max(45).optional().describe('Not a scatter: how far the measured spin axis may lie beside the true one on every throw alike, in degrees.'),
});

export const helloSchema = z.strictObject({
  kind: z.literal('hello'),
  protocol: z.literal(PROTOCOL_VERSION, { error: `this server speaks protocol ${PROTOCOL_VERSION}` }),
  device: idSchema.describe('The same for ever.'),
  run: idSchema.describe('New whenever the device starts without remembering its counter.'),
  mound: idSchema,
  token: z.string().min(1).max(256),
  sight: sightSchema,
  axis: axisSchema.describe('How the spin axis is known.'),
  units: unitsSchema,
  standardErrors: standardErrorsSchema.optional(),
});

const heartbeatSchema = z.strictObject({
  kind: z.literal('heartbeat'),
  time: finite.describe('Milliseconds on the device clock.'),
});

const spinSchema = z
  .strictObject({
    rate: z.number().min(0).describe('Total spin in rpm.'),
    axis: vectorSchema.optional().describe('Direction of the spin vector by the right-hand rule; any length.'),
    tilt: z.number().min(0).max(360).optional().describe('Degrees clockwise from 12 on the clock face that the pitcher sees, towards which the spin pushes the ball.'),
    efficiency: z.number().min(0).max(1).optional().describe('Share of the spin across the direction of flight.'),
  })
  .refine((spin) => spin.axis === undefined || Math.hypot(...spin.axis) > 0, {
    path: ['axis'],
    message: 'an axis of length zero has no direction: send a direction or leave it out',
  });

const pathSchema = z
  .array(z.tuple([finite, finite, finite, finite]))
  .min(60, 'a path needs 60 to 300 samples')
  .max(300, 'a path needs 60 to 300 samples')
  .describe('Samples [time in seconds, x, y, z] in rising time.');

const constantSchema = z
  .strictObject({
    start: vectorSchema,
    velocity: vectorSchema,
    acceleration: vectorSchema,
    distance: z.number().positive().describe('The y at which the three hold.'),
  })
  .describe('Constant acceleration: position, velocity and acceleration where the ball is `distance` from the origin.');

const summarySchema = z.strictObject({
  releaseSpeed: z.number().positive(),
  plateSpeed: z.number().positive().optional(),
  verticalBreak: finite.optional().describe('Induced: against a spinless flight, up is positive.'),
  horizontalBreak: finite.optional().describe('Induced: positive towards +x, the right of the catcher.'),
  flightTime: z.number().positive().optional().describe('Seconds from release to the front of the plate.'),
  release: vectorSchema.optional().describe('Place of the release.'),
  plate: z.strictObject({ x: finite, z: finite }).optional().describe('Place at the front of the plate.'),
});

/** What was measured of one throw: exactly one of path, constant and summary, and what the device knows besides. */
export const throwBodySchema = z
  .strictObject({
    path: pathSchema.optional(),
    constant: constantSchema.optional(),
    summary: summarySchema.optional(),
    spin: spinSchema.optional(),
    seams: z.strictObject({ latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) }).optional()
      .describe('Where the spin axis leaves the ball, in degrees of the seam map.'),
    extension: z.number().positive().optional().describe('From the front of the rubber to the release.'),
    armSpeed: z.number().positive().optional().describe('Speed of the hand just before release.'),
    deliveryDuration: z.number().positive().optional().describe('Seconds from first movement to release.'),
  })
  .refine((body) => [body.path, body.constant, body.summary].filter((shape) => shape !== undefined).length === 1, {
    message: 'send exactly one of path, constant and summary',
  })
  .refine((body) => body.path === undefined || rising(body.path), {
    path: ['path'],
    message: 'the times of a path must rise from sample to sample',
  })
  .refine((body) => body.constant === undefined || Math.abs(body.constant.start[1] - body.constant.distance) < 1e-6, {
    path: ['constant', 'distance'],
    message: 'distance must be the y of start',
  });

function rising(path: readonly (readonly [number, number, number, number])[]): boolean {
  return path.every((sample, index) => index === 0 || sample[0] > path[index - 1]![0]);
}

const throwFrameSchema = z.strictObject({
  kind: z.literal('throw'),
  sequence: sequenceSchema,
  time: finite.describe('Milliseconds on the device clock at release.'),
  body: throwBodySchema,
});

const correctionFrameSchema = z.strictObject({
  kind: z.literal('correction'),
  sequence: sequenceSchema.describe('From the same counter as throws: a correction is settled like a throw.'),
  time: finite,
  corrects: z.strictObject({ run: idSchema.optional().describe('Left out: this run.'), sequence: sequenceSchema }),
  reason: z.string().max(200).optional(),
  body: throwBodySchema.describe('Replaces the whole of the earlier body.'),
});

/** Every frame a device may send after its hello. */
export const deviceFrameSchema = z.discriminatedUnion('kind', [heartbeatSchema, throwFrameSchema, correctionFrameSchema]);

/** Codes of refusals; docs/device-protocol.md says what a device does about each. */
const REFUSAL_CODES = [
  'not-json', 'too-large', 'not-text', 'malformed', 'hello-first', 'hello-twice', 'wrong-token', 'wrong-protocol',
  'impossible', 'body-differs', 'refused-before', 'nothing-to-correct', 'mound-busy', 'flooding', 'storage-failed',
] as const;

export const serverFrameSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('welcome'),
    protocol: z.literal(PROTOCOL_VERSION),
    settledThrough: z.int().min(0).describe('Every number up to this one is stored or finally refused.'),
    gaps: z.array(z.tuple([z.int(), z.int()])).describe('Ranges, both ends included, above settledThrough and below the highest number seen, that are not settled.'),
    heartbeatSeconds: z.number(),
  }),
  z.strictObject({ kind: z.literal('stored'), sequence: sequenceSchema }),
  z.strictObject({
    kind: z.literal('refused'),
    sequence: sequenceSchema.nullable(),
    code: z.enum(REFUSAL_CODES),
    path: z.string().describe('Where in the frame, such as body.path.3.1; empty for the whole frame.'),
    sentence: z.string(),
    final: z.boolean().describe('True: this number is settled, forget it. False: send it again later.'),
  }),
]);

export type Hello = z.infer<typeof helloSchema>;
export type DeviceUnits = z.infer<typeof unitsSchema>;
export type DeviceErrors = z.infer<typeof standardErrorsSchema>;
export type ThrowBody = z.infer<typeof throwBodySchema>;
export type DeviceFrame = z.infer<typeof deviceFrameSchema>;
export type ServerFrame = z.infer<typeof serverFrameSchema>;
export type RefusalCode = (typeof REFUSAL_CODES)[number];
