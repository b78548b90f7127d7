import type { ArmCare, IsoDay } from './care-view.ts';
import type { Cue, Grip, TargetZone } from './coach.ts';
import type { Gate } from './plan-says.ts';
import type { Family, Intent, Observation, Stage } from './vocabulary.ts';

/** What a screen gets of advice. Reasons are codes with numbers; words come on the screen. */

type GateNeed =
  | { readonly code: 'ask-comfort' | 'not-comfortable' }
  | { readonly code: 'share-not-shown'; readonly above: number; readonly lowerBound: number; readonly hits: number; readonly judged: number };

export interface GateState {
  readonly kind: 'met' | 'open';
  readonly needs: readonly GateNeed[];
  /** No zone here, or no share asked for: the gate is comfort alone, and the screen says so. */
  readonly comfortAlone: boolean;
}

export type StageAdvice =
  | { readonly kind: 'no-advice'; readonly because: Exclude<ArmCare['kind'], 'under' | 'near'> }
  | { readonly kind: 'stay'; readonly stage: Stage; readonly gate: GateState }
  | { readonly kind: 'go-on' | 'go-back'; readonly from: Stage; readonly to: Stage; readonly gate: GateState }
  | { readonly kind: 'last-stage'; readonly gate: GateState };

/** The way of the present trial through the stages; `advice` is null while no trial is worked on. */
export interface ProgressView {
  readonly advice: StageAdvice | null;
  /** Every stage in the order of the way. */
  readonly stages: readonly StageProgress[];
}

/** The coach's word that a trial has passed a stage. */
export interface PassedGate {
  readonly stage: Stage;
  /** Its letter in the session in which it was said. */
  readonly trial: string;
  readonly atMs: number;
  readonly reason: string | null;
}

/** How the present trial stands in one stage, over all its days. */
export interface StageProgress {
  readonly stage: Stage;
  readonly gate: Gate;
  readonly hasZone: boolean;
  /** Null while no trial is worked on. */
  readonly work: StageWorkView | null;
  /** Of the present trial, over sessions, oldest first. */
  readonly passed: readonly PassedGate[];
}

interface StageWorkView {
  readonly state: GateState;
  /** As the athlete last said of this trial in this stage; null when nobody asked. */
  readonly comfort: { readonly comfortable: boolean; readonly atMs: number } | null;
  readonly hits: number;
  readonly judged: number;
  /** Of the on-target share; holds at every look. */
  readonly shareLowerBound: number;
  /** Oldest first; the newest may be today. */
  readonly days: readonly { readonly day: IsoDay; readonly throws: number; readonly hits: number; readonly judged: number }[];
}

/** How far the fastballs have left their baseline, smoothed; a measure that holds is null. */
export interface BaselineDrift {
  /** That have come since the baseline. */
  readonly fastballs: number;
  readonly speedMps: number | null;
  readonly releaseHeightM: number | null;
  readonly releaseArmSideM: number | null;
}

/** What a trial was when it was last worked on: its letter there, its day, and how it did with feedback or without. */
interface WorkedBefore {
  readonly letter: string;
  readonly day: IsoDay;
  readonly hits: number;
  readonly judged: number;
}

/** A set without feedback, a day or more after practice: offered, or how it goes. */
export type NextDaySet =
  | {
      readonly kind: 'offered';
      readonly trial: { readonly intent: Intent; readonly grip: Grip | null; readonly cue: Cue | null; readonly family?: Family };
      readonly because: 'found-better' | 'gate-near';
      readonly before: WorkedBefore;
      readonly throws: number;
      /** The letter of the same trial where it was begun here already. */
      readonly resume: string | null;
    }
  | { readonly kind: 'thrown'; readonly letter: string; readonly throws: number; readonly hits: number; readonly judged: number; readonly before: WorkedBefore };

export type BodyMeasure = 'deliveryDurationS' | 'armSpeedMps' | 'releaseHeightM' | 'releaseArmSideM' | 'extensionM';

/** One measure, changeup minus fastball (for `fastballSpeedMps`: fastballs of late minus the first ones), in the unit of its name. */
export interface BodyEvidence {
  readonly measure: BodyMeasure | 'fastballSpeedMps';
  readonly difference: number;
  /** Holds at every look; null while the throws are too few. */
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** Below this in either direction a difference does not matter. House rule. */
  readonly smallest: number;
  /** `moved` is a release elsewhere: not slowing, and not the same arm either. */
  readonly way: 'slowing' | 'same' | 'moved' | 'other-way' | 'cannot-tell';
}
export interface HonestArm {
  readonly kind: 'honest-arm' | 'slowing' | 'cannot-tell';
  /** `direct`: the delivery or the arm itself was timed; `release`: only where and how the ball left the hand. */
  readonly basis: 'direct' | 'release' | 'none';
  readonly evidence: readonly BodyEvidence[];
}

/** Which of two trials to throw now, and how many. */
export interface NextBlock {
  readonly trial: string;
  readonly throws: number;
  /** True when the present block is not finished, false when a new one begins. */
  readonly goesOn: boolean;
}

/** One comparison, and the days of it that are known here. */
export interface ComparisonEntry {
  readonly k: number;
  readonly stage: Stage;
  readonly zone: TargetZone;
  readonly openedAtMs: number;
  readonly days: readonly { readonly session: string; readonly a: string; readonly b: string; readonly baseline: number }[];
}

export interface ObservationView {
  readonly atMs: number;
  readonly what: Observation;
  readonly seen: boolean;
  readonly place: number | null;
  readonly trial: string | null;
}

/** What an athlete's trials of one family have shown so far. */
export interface TriedFamily {
  readonly family: Family;
  readonly throws: number;
  /** Mean signed distance to the edge of the target zone; null without a zone. */
  readonly meanMiss: number | null;
  /** Mean separation; null without a baseline. */
  readonly separation: { readonly verticalM: number; readonly armSideM: number } | null;
  /** What the athlete says of the grip; null when not asked. */
  readonly comfortable: boolean | null;
}
