import { z } from 'zod';
import { plansElsewhereSchema } from './plans-elsewhere.ts';
import { speedBandSchema } from './speed-band.ts';
import { familySchema, idSchema, stageSchema } from './spelling.ts';
import { zoneSchema } from './zone.ts';

const missingSchema = z.enum(['not-visible', 'not-defined', 'not-sent', 'problem']);
const readingSchema = z.union([z.number(), missingSchema]);
const vectorSchema = z.tuple([z.number(), z.number(), z.number()]);

const baselineSchema = z.strictObject({
  number: z.int().min(1),
  stage: stageSchema,
  count: z.int().min(1),
  atMs: z.int().describe('When its last fastball was thrown.'),
  speedMps: z.number(),
  speedSpreadMps: z.number(),
  verticalM: z.number(),
  armSideM: z.number(),
  flightTimeS: readingSchema,
  releaseHeightM: readingSchema,
  releaseArmSideM: readingSchema,
  path: z.union([z.strictObject({ positionM: vectorSchema, velocityMps: vectorSchema, accelerationMps2: vectorSchema }), missingSchema]),
  cloud: z.array(z.tuple([z.number(), z.number()])),
});

/**
 * What other mounds know of an athlete besides the arm, told by the server: before a session opens (`session` null), and to a
 * session when something of it is said elsewhere or is about to be built on there. So a mound's log stands alone.
 * Its baselines were computed from measurements that stand in another log: they are kept as they were known then.
 */
export const athleteElsewhereSchema = z.strictObject({
  kind: z.literal('athlete-elsewhere'),
  athlete: idSchema,
  session: idSchema.nullable(),
  scienceVersion: z.int().describe('With which the baselines were computed.'),
  targets: z.array(z.strictObject({ stage: stageSchema, zone: zoneSchema.nullable(), speedBand: speedBandSchema.nullable(), saidAtMs: z.int() })).describe('The newest of each stage; null where it was taken away.'),
  baselines: z.array(z.strictObject({ newest: baselineSchema, highestNumber: z.int().min(1) })).describe('The newest of each stage; the highest number may be another’s.'),
  tried: z.array(z.strictObject({
    stage: stageSchema,
    tried: z.strictObject({
      family: familySchema,
      throws: z.int().min(0),
      meanMiss: z.number().nullable(),
      separation: z.strictObject({ verticalM: z.number(), armSideM: z.number() }).nullable(),
      comfortable: z.boolean().nullable(),
    }),
  })).describe('What closed sessions have shown of each family, over all of their days.'),
  comparisons: z.int().min(0).describe('The highest number that a comparison of the athlete has there; 0 without one.'),
  plans: plansElsewhereSchema.optional().describe('Absent in logs that are older than this.'),
});

export type AthleteElsewhere = z.infer<typeof athleteElsewhereSchema>;
