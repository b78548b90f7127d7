import { z } from 'zod';
import { cueSchema, gripSchema } from './coach.ts';
import { decisionSetSchema } from './decision-says.ts';
import { comparisonOpenedSchema, countPlannedSchema, gatePassedSchema, gateSetSchema } from './plan-says.ts';
import { daySchema, familySchema, idSchema, intentSchema, stageSchema, trialSchema } from './spelling.ts';

const atMsSchema = z.int();
const countSchema = z.int().min(0);
/** Names a trial over sessions; a grip and a cue of the longest are well under this. */
const workSchema = z.string().max(1000);
const { k, stage, zone, a, b, baseline } = comparisonOpenedSchema.shape;
const { throws, dayMost } = countPlannedSchema.shape;
const { beforeS, basis } = decisionSetSchema.shape;

/**
 * What other mounds know of an athlete's plans, comparisons and earlier trials. Of what can be said again the newest; of what
 * gathers only what this mound was not told before.
 */
export const plansElsewhereSchema = z.strictObject({
  gates: z.array(z.strictObject({ stage, gate: gateSetSchema.shape.gate, saidAtMs: atMsSchema })),
  count: z.strictObject({ throws, dayMost, day: daySchema.describe('For which the throws are planned.'), saidAtMs: atMsSchema }).nullable(),
  decision: z.strictObject({ beforeS, basis, saidAtMs: atMsSchema }).nullable(),
  comparisons: z.array(z.strictObject({ k, stage, zone, openedAtMs: atMsSchema, days: z.array(z.strictObject({ session: idSchema, a, b, baseline })).min(1) })),
  compared: z.array(z.strictObject({
    k, session: idSchema, day: daySchema,
    a: z.array(z.number()).describe('Misses of the throws that count.'), b: z.array(z.number()), workA: workSchema, workB: workSchema, lastAtMs: atMsSchema,
  })).describe('What closed sessions have to say to these comparisons; computed with the science version that stands above.'),
  worked: z.array(z.strictObject({
    stage: stageSchema, work: workSchema, day: daySchema, firstAtMs: atMsSchema, lastAtMs: atMsSchema,
    trial: z.strictObject({ letter: trialSchema, intent: intentSchema, grip: gripSchema.nullable(), cue: cueSchema.nullable(), family: familySchema.optional() }),
    throws: countSchema, hits: countSchema, judged: countSchema, quietThrows: countSchema,
  })).describe('How trials did in closed sessions.'),
  comfort: z.array(z.strictObject({ stage: stageSchema, work: workSchema, comfortable: z.boolean(), atMs: atMsSchema })),
  passed: z.array(z.strictObject({ stage: stageSchema, work: workSchema, trial: trialSchema, atMs: atMsSchema, reason: gatePassedSchema.shape.reason })),
});

export type PlansElsewhere = z.infer<typeof plansElsewhereSchema>;
