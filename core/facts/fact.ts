import { z } from 'zod';
import { armElsewhereSchema } from './arm-says.ts';
import { coachSaysSchema } from './coach.ts';
import { athleteElsewhereSchema } from './elsewhere-says.ts';
import { erasedSchema } from './erased-says.ts';
import { throwBodySchema } from './frames.ts';
import { importWithdrawnSchema, sessionImportedSchema, throwImportedSchema } from './import-says.ts';
import { sourceSchema } from './source.ts';
import { idSchema } from './spelling.ts';

/** The version written with every fact. A newer one is refused on reading, an older one is upgraded. */
export const FACT_VERSION = 1;

const deviceSaysSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('throw-measured'), source: sourceSchema, body: throwBodySchema }),
  z.strictObject({
    kind: z.literal('throw-corrected'),
    source: sourceSchema,
    corrects: z.strictObject({ run: idSchema, sequence: z.int().min(1) }),
    reason: z.string().nullable(),
    body: throwBodySchema,
  }),
]);

/** Whatever may stand in a log. */
export const saidSchema = z.union([deviceSaysSchema, coachSaysSchema, armElsewhereSchema, athleteElsewhereSchema, erasedSchema, sessionImportedSchema, throwImportedSchema, importWithdrawnSchema]);

export type { Source } from './source.ts';
export type DeviceSays = z.infer<typeof deviceSaysSchema>;
export type Said = z.infer<typeof saidSchema>;

/** One line of a mound's log. */
export interface Fact {
  /** Order in the mound's log, from 1 without holes; the only order there is. */
  readonly place: number;
  readonly mound: string;
  /** Milliseconds since 1970 on the server's clock when the fact arrived. */
  readonly atMs: number;
  /** `device:<id>`, `coach:<name>`, `athlete` or `server`; a fact from before coaches signed in says `coach`. */
  readonly by: string;
  readonly version: number;
  readonly said: Said;
}
