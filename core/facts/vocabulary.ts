import { z } from 'zod';
import { feetToM } from '../units/convert.ts';

/** The closed lists of words that facts are made of. The meaning of each stands in docs/words.md. */
export const STAGES = ['catch-play', 'long-toss', 'flat-ground', 'mound', 'hitters'] as const;
export const EFFORTS = ['easy', 'firm', 'full'] as const;
export const INTENTS = ['four-seam', 'sinker', 'cutter', 'changeup', 'split', 'curve', 'slider', 'other'] as const;
/** How a changeup gets its separation. */
export const FAMILIES = ['turnover', 'seam-effect', 'split'] as const;
export const HANDS = ['right', 'left'] as const;
const SIGHTS = ['full-flight', 'spin-only'] as const;
const AXES = ['measured', 'inferred', 'none'] as const;

export const stageSchema = z.enum(STAGES);
export const effortSchema = z.enum(EFFORTS);
export const intentSchema = z.enum(INTENTS);
export const familySchema = z.enum(FAMILIES);
export const sightSchema = z.enum(SIGHTS);
export const axisSchema = z.enum(AXES);
/** The letter of a trial in its session: A … Z, AA, AB … */
export const trialSchema = z.string().regex(/^[A-Z]{1,2}$/);

export type Stage = (typeof STAGES)[number];
export type Effort = (typeof EFFORTS)[number];
export type Intent = (typeof INTENTS)[number];
export type Family = (typeof FAMILIES)[number];
export type Hand = (typeof HANDS)[number];
export type Sight = (typeof SIGHTS)[number];
export type AxisKnowledge = (typeof AXES)[number];

/** A name that may stand in an address: letters, digits, dash, dot and underscore. */
export const idSchema = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/, {
  message: 'use 1 to 64 letters, digits, dashes, dots or underscores, beginning with a letter or digit',
});

/** Metres from the front of the rubber (or the thrower's line) to the rear point of the plate (or the receiver). */
export const DEFAULT_DISTANCE_M: Readonly<Record<Stage, number>> = {
  'catch-play': feetToM(60.5),
  'long-toss': feetToM(120),
  'flat-ground': feetToM(60.5),
  mound: feetToM(60.5),
  hitters: feetToM(60.5),
};

/** Whether a stage has a plate to throw at: where it has none, plate place and approach are not defined. */
export const STAGE_HAS_PLATE: Readonly<Record<Stage, boolean>> = {
  'catch-play': false,
  'long-toss': false,
  'flat-ground': true,
  mound: true,
  hitters: true,
};
