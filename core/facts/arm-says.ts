import { z } from 'zod';
import { daySchema, effortSchema, idSchema, stageSchema } from './spelling.ts';

/** What is said about the athlete's arm and comfort, on Bench by the coach or on Glance by the athlete. */
const fromSchema = z.enum(['bench', 'glance']);
const areasSchema = z.array(z.enum(['shoulder', 'elbow', 'forearm', 'hand', 'back', 'other'])).max(6);

export const armReportedSchema = z.strictObject({
  kind: z.literal('arm-reported'),
  session: idSchema,
  from: fromSchema,
  said: z.enum(['nothing', 'tired', 'sore', 'pain', 'numb']).describe('The answer to "how is the arm?". `nothing` means nothing to report; it clears nobody.'),
  areas: areasSchema.describe('Where; empty for `nothing` and where nobody said.'),
});

/** The only way on from pain. It keeps what somebody said, word for word; the tool itself never clears anyone. */
export const painAnsweredSchema = z.strictObject({
  kind: z.literal('pain-answered'),
  session: idSchema,
  answer: z.enum(['professional-looked', 'reported-by-mistake']),
  words: z.string().trim().min(1).max(200).describe('Who looked and what was said, or how the mistake came about.'),
});

export const comfortSaidSchema = z.strictObject({
  kind: z.literal('comfort-said'),
  session: idSchema,
  from: fromSchema,
  comfortable: z.boolean().describe('Whether the present grip is comfortable in the present stage, as the athlete says.'),
});

export const reportSchema = z.strictObject({ atMs: z.int(), day: daySchema, from: fromSchema, said: armReportedSchema.shape.said, areas: areasSchema });

/**
 * What other mounds know of an athlete's arm, told by the server: before a session opens (`session` null), and to an open
 * session when something is said elsewhere. So a mound's log stands alone, and pain is known wherever the athlete throws.
 */
export const armElsewhereSchema = z.strictObject({
  kind: z.literal('arm-elsewhere'),
  athlete: idSchema,
  session: idSchema.nullable(),
  days: z.array(z.strictObject({ day: daySchema, throws: z.array(z.strictObject({ stage: stageSchema, effort: effortSchema, count: z.int().min(1) })) })),
  pain: reportSchema.nullable(),
  soreness: reportSchema.nullable(),
  answeredAtMs: z.int().nullable().describe('When pain was last answered for.'),
});

export type ArmElsewhere = z.infer<typeof armElsewhereSchema>;
export type ArmSaid = z.infer<typeof armReportedSchema>['said'];
export type ArmArea = z.infer<typeof areasSchema>[number];
export type PainAnswer = z.infer<typeof painAnsweredSchema>['answer'];
