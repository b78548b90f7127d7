import { z } from 'zod';
import { helloSchema } from './frames.ts';

/** Who measured, and what that device can know: stored with each throw so that a fact stands alone. */
export const sourceSchema = helloSchema
  .pick({ device: true, run: true, sight: true, axis: true, units: true, standardErrors: true })
  .extend({ sequence: z.int().min(1), time: z.number() });

export type Source = z.infer<typeof sourceSchema>;
