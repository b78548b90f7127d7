import { z } from 'zod';
import { axisSchema, idSchema, sightSchema } from './spelling.ts';

/**
 * What stands where a fact about an erased athlete stood: its place, time and mound stay, so that a log has no hole, and
 * nothing of the athlete. `by` of such a fact is who erased.
 */
export const erasedSchema = z.strictObject({
  kind: z.literal('erased'),
  erasedAtMs: z.int(),
  tookMound: z.boolean().describe('It gave the mound to the athlete: from here on nobody has it, until somebody else is given it.'),
  seenBy: z.strictObject({ device: idSchema, sight: sightSchema, axis: axisSchema }).nullable().describe('Of a throw: what measured it.'),
});

export type Erased = z.infer<typeof erasedSchema>;
