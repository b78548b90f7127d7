import { z } from 'zod';
import { idSchema } from './vocabulary.ts';

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

export type ArmSaid = z.infer<typeof armReportedSchema>['said'];
export type ArmArea = z.infer<typeof areasSchema>[number];
export type PainAnswer = z.infer<typeof painAnsweredSchema>['answer'];
