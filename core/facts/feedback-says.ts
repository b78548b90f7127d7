import { z } from 'zod';
import { idSchema } from './spelling.ts';

/** When the athlete is shown the numbers of a throw. */
const feedbackModeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('every-throw') }),
  z.strictObject({ kind: z.literal('outside-band') }).describe('Only off target; silence means good.'),
  z.strictObject({ kind: z.literal('summary'), after: z.union([z.literal(3), z.literal(5)]) }),
  z.strictObject({ kind: z.literal('fading') }).describe('100, then 50, then 25 % of the throws.'),
  z.strictObject({ kind: z.literal('none') }).describe('A set without feedback, such as the one of the next day.'),
]);

export const feedbackSetSchema = z.strictObject({
  kind: z.literal('feedback-set'),
  session: idSchema,
  mode: feedbackModeSchema,
  askFirst: z.boolean().describe('The athlete says where it went and how it moved before the numbers come.'),
});

export const throwGuessedSchema = z.strictObject({
  kind: z.literal('throw-guessed'),
  session: idSchema,
  place: z.int().min(1).describe('Of the throw.'),
  went: z.strictObject({ height: z.enum(['up', 'middle', 'down']), side: z.enum(['arm-side', 'middle', 'glove-side']) }).nullable(),
  moved: z.strictObject({ vertical: z.enum(['above', 'on-target', 'below']), side: z.enum(['arm-side', 'on-target', 'glove-side']) }).nullable()
    .describe('Against the target zone.'),
});

export type FeedbackMode = z.infer<typeof feedbackModeSchema>;
export type ThrowGuess = Pick<z.infer<typeof throwGuessedSchema>, 'went' | 'moved'>;
