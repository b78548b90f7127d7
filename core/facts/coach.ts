import { z } from 'zod';
import { airSetSchema } from './air-says.ts';
import { armReportedSchema, comfortSaidSchema, painAnsweredSchema } from './arm-says.ts';
import { decisionSetSchema } from './decision-says.ts';
import { feedbackSetSchema, throwGuessedSchema } from './feedback-says.ts';
import { comparisonContinuedSchema, comparisonOpenedSchema, countPlannedSchema, gatePassedSchema, gateSetSchema, observationTickedSchema } from './plan-says.ts';
import { speedBandSchema } from './speed-band.ts';
import { effortSchema, familySchema, idSchema, intentSchema, stageSchema, trialSchema } from './spelling.ts';
import { HANDS } from './vocabulary.ts';
import { zoneSchema } from './zone.ts';

/** What a coach may say on Bench. Each is stored as one fact; none edits an earlier one. */
const placeSchema = z.int().min(1);
const placesSchema = z.array(placeSchema).min(1).max(1000);
const text = (longest: number) => z.string().trim().min(1).max(longest);
export const distanceSchema = z.number().min(5).max(120).describe('Metres from rubber to the rear point of the plate, or to the receiver.');

export const athleteSchema = z.strictObject({
  id: idSchema,
  name: text(60),
  hand: z.enum(HANDS),
  birthYear: z.int().min(1930).max(2100),
  mainFastball: z.enum(['four-seam', 'sinker', 'cutter']),
  units: z.enum(['imperial', 'metric']),
  language: z.enum(['en', 'es']),
});

export const gripSchema = z.strictObject({
  seams: z.enum(['two-seam', 'four-seam', 'one-seam']),
  spread: z.enum(['together', 'normal', 'wide', 'split']).describe('Finger spread.'),
  thumbDeg: z.int().min(-180).max(180).describe('Place of the thumb, from the bottom of the ball; towards the arm side positive.'),
  pressure: z.enum(['index', 'middle', 'ring', 'even']).describe('The finger that presses.'),
  depth: z.enum(['fingertips', 'normal', 'deep']).describe('Depth in the hand.'),
  tiltDeg: z.int().min(-90).max(90).describe('Tilt of the ball in the hand; towards the arm side positive.'),
});

export const cueSchema = z.strictObject({
  words: text(80),
  focus: z.enum(['internal', 'external']).nullable(),
});

export const coachSaysSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('session-opened'),
    session: idSchema,
    athlete: athleteSchema,
    timeZone: z.string().min(1).max(60).describe('IANA name; times of the session are shown in it.'),
    stage: stageSchema,
    distanceM: distanceSchema,
    effort: effortSchema,
  }),
  z.strictObject({ kind: z.literal('session-closed'), session: idSchema }),
  z.strictObject({ kind: z.literal('mound-passed'), session: idSchema }).describe('The open session that throws belong to from now on.'),
  z.strictObject({ kind: z.literal('stage-set'), session: idSchema, stage: stageSchema, distanceM: distanceSchema, effort: effortSchema }),
  z.strictObject({ kind: z.literal('intent-set'), session: idSchema, intent: intentSchema }),
  z.strictObject({ kind: z.literal('trial-begun'), session: idSchema, intent: intentSchema, grip: gripSchema.nullable(), cue: cueSchema.nullable(), family: familySchema.optional() })
    .describe('A new trial; its letter follows from the order in the session. `family` is how it is meant to get its separation; absent where nobody said.'),
  z.strictObject({ kind: z.literal('trial-resumed'), session: idSchema, trial: trialSchema }),
  z.strictObject({ kind: z.literal('trial-left'), session: idSchema }).describe('From now on throws belong to no trial; what is meant stays.'),
  z.strictObject({ kind: z.literal('zone-set'), session: idSchema, zone: zoneSchema, speedBand: speedBandSchema.nullable(), reason: text(200).nullable() }),
  z.strictObject({ kind: z.literal('zone-removed'), session: idSchema, reason: text(200) }).describe('The present stage has no target any more, and no speed band: its gate is comfort alone.'),
  z.strictObject({ kind: z.literal('baseline-renewed'), session: idSchema, stage: stageSchema }).describe('The baseline is formed anew from the last five fastballs of the stage.'),
  z.strictObject({ kind: z.literal('throws-tagged'), session: idSchema, places: placesSchema, intent: intentSchema.nullable(), trial: trialSchema.nullable() })
    .describe('What they were meant as, said afterwards; `intent` null takes what was said of them back.'),
  z.strictObject({ kind: z.literal('throws-excluded'), session: idSchema, places: placesSchema, reason: text(200) }),
  z.strictObject({ kind: z.literal('throws-restored'), session: idSchema, places: placesSchema }),
  z.strictObject({ kind: z.literal('throws-moved'), places: placesSchema, session: idSchema.nullable(), from: idSchema.nullable().optional() })
    .describe('To another session, or to none. With `from` only out of that session, or out of none: refused where somebody has moved one of them on meanwhile.'),
  z.strictObject({ kind: z.literal('throws-claimed'), session: idSchema, through: placeSchema.describe('The newest place that the coach has seen.') })
    .describe('Every throw that nobody has, up to that place, is this session’s: however many they are.'),
  z.strictObject({ kind: z.literal('note-written'), session: idSchema, text: text(500), place: placeSchema.nullable() }),
  z.strictObject({ kind: z.literal('note-withdrawn'), session: idSchema, note: placeSchema.describe('Where the log holds the note.') }).describe('The note is shown no longer; the log keeps it.'),
  z.strictObject({ kind: z.literal('throw-bookmarked'), session: idSchema, place: placeSchema, on: z.boolean() }).describe('A throw to come back to; `on` false takes the bookmark off.'),
  airSetSchema,
  armReportedSchema,
  painAnsweredSchema,
  comfortSaidSchema,
  feedbackSetSchema,
  throwGuessedSchema,
  gateSetSchema,
  gatePassedSchema,
  countPlannedSchema,
  observationTickedSchema,
  comparisonOpenedSchema,
  comparisonContinuedSchema,
  decisionSetSchema,
]);

export type CoachSays = z.infer<typeof coachSaysSchema>;
export type Athlete = z.infer<typeof athleteSchema>;
export type Grip = z.infer<typeof gripSchema>;
export type Cue = z.infer<typeof cueSchema>;
export type TargetZone = z.infer<typeof zoneSchema>;
export type SpeedBand = z.infer<typeof speedBandSchema>;
