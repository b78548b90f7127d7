import { z } from 'zod';

/** Throw minus fastball, so slower is negative; metres per second. */
export const speedBandSchema = z.strictObject({ lowMps: z.number().min(-25).max(5), highMps: z.number().min(-25).max(5) })
  .refine((band) => band.lowMps < band.highMps, { path: ['lowMps'], message: 'the low end of the band must lie below its high end' });
