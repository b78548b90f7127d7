import { z } from 'zod';
import { idSchema, observationSchema, stageSchema, trialSchema } from './spelling.ts';
import { zoneSchema } from './zone.ts';

/** What the coach says about the way through the stages, the size of the bullpen, comparisons, and what was seen. */
const numberedSchema = z.int().min(1).max(10_000);

export const gateSetSchema = z.strictObject({
  kind: z.literal('gate-set'),
  session: idSchema,
  stage: stageSchema,
  gate: z.strictObject({
    comfort: z.boolean().describe('The athlete must say that the grip is comfortable.'),
    shareAbove: z.number().min(0).max(0.95).nullable().describe('The on-target share must be shown to be above this; null for comfort alone.'),
  }),
});

export const gatePassedSchema = z.strictObject({
  kind: z.literal('gate-passed'),
  session: idSchema,
  stage: stageSchema,
  trial: trialSchema,
  reason: z.string().trim().min(1).max(200).nullable(),
}).describe('The coach says that this trial has passed this stage, whatever the gate shows.');

export const countPlannedSchema = z.strictObject({
  kind: z.literal('count-planned'),
  session: idSchema,
  throws: z.int().min(1).max(200).nullable().describe('Throws from a mound planned for today; null: nothing planned.'),
  dayMost: z.int().min(1).max(200).nullable().describe('A rule of league or club for one day. It can only be stricter than the guideline.'),
});

export const observationTickedSchema = z.strictObject({
  kind: z.literal('observation-ticked'),
  session: idSchema,
  what: observationSchema,
  seen: z.boolean(),
  place: z.int().min(1).nullable().describe('Of the throw it was seen on; null for the trial as a whole.'),
});

const daySchema = { a: trialSchema, b: trialSchema, baseline: numberedSchema.describe('Of the fastball baseline that both are held against.') };

export const comparisonOpenedSchema = z.strictObject({
  kind: z.literal('comparison-opened'),
  session: idSchema,
  k: numberedSchema.describe('Counts the comparisons of the athlete; given once and for all.'),
  stage: stageSchema,
  zone: zoneSchema.describe('As it stood; moving the target later does not move it.'),
  ...daySchema,
}).describe('Two trials held against each other. It fixes trials, zone, baseline and number.');

export const comparisonContinuedSchema = z.strictObject({ kind: z.literal('comparison-continued'), session: idSchema, k: numberedSchema, day: z.strictObject({ session: idSchema, ...daySchema }) })
  .describe('Another day of the same two trials, with that day’s baseline: of this session or of an earlier one.');

export type Gate = z.infer<typeof gateSetSchema>['gate'];
