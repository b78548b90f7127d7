import { z } from 'zod';

/** The region of vertical and arm-side separation that is worked towards, in metres. */
export const zoneSchema = z.strictObject({
  kind: z.literal('ellipse'),
  verticalM: z.number().min(-1.5).max(1.5).describe('Centre; down is negative.'),
  armSideM: z.number().min(-1.5).max(1.5),
  verticalRadiusM: z.number().min(0.01).max(1),
  armSideRadiusM: z.number().min(0.01).max(1),
});
