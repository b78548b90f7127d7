import { feetToM } from '../units/convert.ts';

/** The closed lists of words that facts are made of. The meaning of each stands in docs/words.md. */
export const STAGES = ['catch-play', 'long-toss', 'flat-ground', 'mound', 'hitters'] as const;
export const EFFORTS = ['easy', 'firm', 'full'] as const;
export const INTENTS = ['four-seam', 'sinker', 'cutter', 'changeup', 'split', 'curve', 'slider', 'other'] as const;
/** How a changeup gets its separation. */
export const FAMILIES = ['turnover', 'seam-effect', 'split'] as const;
/** What a coach sees of a throw and no device measures. */
export const OBSERVATIONS = ['loose-wrist-and-forearm', 'forced-turn', 'slight-cut', 'straight-behind'] as const;
export const HANDS = ['right', 'left'] as const;
export const SIGHTS = ['full-flight', 'spin-only'] as const;
export const AXES = ['measured', 'inferred', 'none'] as const;

export type Stage = (typeof STAGES)[number];
export type Effort = (typeof EFFORTS)[number];
export type Intent = (typeof INTENTS)[number];
export type Family = (typeof FAMILIES)[number];
export type Observation = (typeof OBSERVATIONS)[number];
export type Hand = (typeof HANDS)[number];
export type Sight = (typeof SIGHTS)[number];
export type AxisKnowledge = (typeof AXES)[number];

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
