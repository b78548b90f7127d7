import { z } from 'zod';

/** The air of a mound. It holds for the throws that follow, whoever throws them. */
const airSchema = z.strictObject({
  where: z.enum(['indoors', 'outdoors']),
  temperatureC: z.number().min(-20).max(55),
  relativeHumidity: z.number().min(0).max(1).describe('0 dry, 1 saturated.'),
  height: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('pressure'), pressurePa: z.number().min(50_000).max(110_000).describe('At the mound, not reduced to sea level.') }),
    z.strictObject({ kind: z.literal('altitude'), altitudeM: z.number().min(-450).max(5_000) }),
  ]),
  wind: z
    .strictObject({
      towardsPlateMps: z.number().min(-30).max(30).describe('From the mound to the plate is positive.'),
      towardsRightMps: z.number().min(-30).max(30).describe('To the right of the catcher is positive.'),
    })
    .nullable()
    .describe('Null: not known. Indoors it is still.'),
});

export const airSetSchema = z.strictObject({ kind: z.literal('air-set'), air: airSchema });

export type MoundAir = z.infer<typeof airSchema>;
