import { z } from 'zod';
import { idSchema } from './spelling.ts';

/** Where the coach wants the gap to the fastball told. Nobody knows when a batter decides, so it is said and not measured. */
export const decisionSetSchema = z.strictObject({
  kind: z.literal('decision-set'),
  session: idSchema,
  beforeS: z.number().min(0.15).max(0.225).describe('Seconds before the fastball arrives at the front of the plate.'),
  basis: z.enum(['same-time', 'same-distance']).describe('Both balls at the same moment, or both where the fastball is at that moment.'),
});

/** Of the whole session, and of the athlete’s next ones. */
export type Decision = Pick<z.infer<typeof decisionSetSchema>, 'beforeS' | 'basis'>;
