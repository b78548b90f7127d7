import { z } from 'zod';
import { athleteSchema, cueSchema, distanceSchema } from './coach.ts';
import { throwBodySchema } from './frames.ts';
import { sourceSchema } from './source.ts';
import { effortSchema, idSchema, intentSchema, stageSchema, trialSchema } from './spelling.ts';

/** What came out of a file: sessions that were thrown before, perhaps elsewhere, each with its own time beside that of its arrival. */
const fileSchema = z.strictObject({
  name: z.string().min(1).max(200),
  sha256: z.string().regex(/^[0-9a-f]{64}$/).describe('Of the bytes of the file.'),
});

export const sessionImportedSchema = z.strictObject({
  kind: z.literal('session-imported'),
  session: idSchema,
  athlete: athleteSchema,
  timeZone: z.string().min(1).max(60),
  stage: stageSchema,
  distanceM: distanceSchema,
  effort: effortSchema,
  openedAtMs: z.int().describe('When its first throw was thrown, as the file says; when the fact arrived stands beside it as with every fact.'),
  closedAtMs: z.int().describe('When its last throw was thrown.'),
  times: z.enum(['of-throws', 'of-days']).describe('`of-days`: the file says no time of day, so the throws stand a second apart from noon on, in the order of the file.'),
  trials: z.array(z.strictObject({ intent: intentSchema, cue: cueSchema.nullable() })).max(100).describe('Lettered in this order. Grips stand in no file.'),
  file: fileSchema,
}).describe('A whole session out of a file. It is closed from the beginning, and takes the mound from nobody.');

export const throwImportedSchema = z.strictObject({
  kind: z.literal('throw-imported'),
  session: idSchema.describe('Imported into the same log before it.'),
  source: sourceSchema.describe('`run` names the file by the beginning of its hash, `sequence` is the line in it, `time` when the throw was thrown in milliseconds since 1970.'),
  body: throwBodySchema,
  intent: intentSchema.nullable(),
  trial: trialSchema.nullable(),
});

export const importWithdrawnSchema = z.strictObject({
  kind: z.literal('import-withdrawn'),
  session: idSchema.describe('Imported into the same log before it. The sessions of one import are withdrawn together.'),
}).describe('A session out of a wrong file is taken back: from here on nothing counts it. What was said of it stays in the log.');

export type SessionImported = z.infer<typeof sessionImportedSchema>;
export type ThrowImported = z.infer<typeof throwImportedSchema>;
export type ImportWithdrawn = z.infer<typeof importWithdrawnSchema>;
export type ImportedFile = z.infer<typeof fileSchema>;
