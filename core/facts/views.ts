import type { ImportedFile } from './import-says.ts';
import type { BaselineDrift, HonestArm, NextDaySet, ObservationView, ProgressView, TriedFamily } from './advice-view.ts';
import type { MoundAir } from './air-says.ts';
import type { ArmCare, ArmTalk, FatigueSign } from './care-view.ts';
import type { Athlete, Cue, Grip, SpeedBand, TargetZone } from './coach.ts';
import type { Decision } from './decision-says.ts';
import type { FeedbackView } from './feedback-view.ts';
import type { AxisKnowledge, Effort, Family, Intent, Sight, Stage } from './vocabulary.ts';

/**
 * What a screen gets: numbers in SI and radians rounded to their quantum, arm side positive for either hand,
 * and the reason wherever there is no number. Screens turn them into words, units and pictures.
 */

/** Why a number is not there. `not-visible`: this device cannot see it; `not-defined`: the stage has no such thing;
 *  `not-sent`: the device could have sent it and did not; `problem`: the measurement contradicts itself. */
export type Missing = 'not-visible' | 'not-defined' | 'not-sent' | 'problem';
export type Reading = number | Missing;

export interface ThrowView {
  /** Place of the measurement in the mound's log: the throw's name for coach statements. */
  readonly place: number;
  /** Position in its session, from 1. */
  readonly number: number;
  readonly atMs: number;
  readonly stage: Stage;
  readonly intent: Intent | null;
  /** True when the intent was said for this throw afterwards. */
  readonly taggedLater: boolean;
  readonly trial: string | null;
  readonly fastball: boolean;
  readonly excluded: string | null;
  readonly corrected: boolean;
  /** Somebody marked it to come back to. */
  readonly bookmarked: boolean;
  /** Movement was inferred from spin, not seen. */
  readonly inferred: boolean;
  readonly problem: string | null;
  readonly speedMps: Reading;
  /** Induced breaks, drag kept, release to front of plate. */
  readonly verticalM: Reading;
  readonly armSideM: Reading;
  readonly flightTimeS: Reading;
  /** What the flight time rests on: the path that was seen, the device's own word, a flight by the spin, or no more than a speed. */
  readonly flightTimeFrom: 'path' | 'device' | 'spin' | 'speed' | null;
  readonly releaseHeightM: Reading;
  readonly releaseArmSideM: Reading;
  /** From the rubber to where the ball leaves the hand, as the device measured it; without it the release is taken to be 5.5 ft in front of the rubber. */
  readonly extensionM: Reading;
  readonly plateHeightM: Reading;
  /** At the front of the plate, towards the catcher's right whatever the hand. */
  readonly plateRightM: Reading;
  readonly plateSpeedMps: Reading;
  /** Both at the front of the plate: against the ground, negative is falling; and across it, positive towards the arm side. */
  readonly verticalApproachRad: Reading;
  readonly horizontalApproachRad: Reading;
  readonly spinRpm: Reading;
  /** Clock seen by the pitcher, 0 = 12, clockwise, not mirrored. */
  readonly tiltRad: Reading;
  readonly efficiency: Reading;
  /** Angle of the axis out of the plane across the flight: positive turns clockwise for the pitcher, not mirrored. A device that tells only tilt and efficiency does not tell which way. */
  readonly gyroRad: Reading;
  /** How tilt, efficiency and gyro came to be known: `inferred` from the path as soon as one of them is; null where none is known. */
  readonly spinFrom: 'measured' | 'inferred' | null;
  /** Where the spin axis leaves the ball on the map of the seams; null where the device does not tell. */
  readonly seamAxis: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
  readonly unexplained: UnexplainedReading;
  /** One standard error of each reading of the path, where the measurement gives them: a path of samples does. */
  readonly standardErrors: ThrowErrors | null;
  /** Throw minus fastball baseline; null without a baseline or for an excluded throw. */
  readonly separation: SeparationView | null;
  readonly miss: MissView | null;
  /** What the batter has against the fastball aimed at the same place; null where there is no separation, and for fastballs. */
  readonly gap: GapView | Missing | null;
}

/** Readings whose standard error a path of samples gives. */
export type ReadingWithError =
  | 'speedMps' | 'verticalM' | 'armSideM' | 'flightTimeS' | 'releaseHeightM' | 'releaseArmSideM'
  | 'plateHeightM' | 'plateRightM' | 'plateSpeedMps' | 'verticalApproachRad' | 'horizontalApproachRad';
/** In the unit of the reading; of one that is not there it says nothing. */
export type ThrowErrors = Readonly<Record<ReadingWithError, number>>;

/** Observed minus spin-explained movement, in the convention of the induced breaks, arm side positive. */
export interface UnexplainedView {
  readonly kind: 'unexplained';
  readonly verticalM: number;
  readonly armSideM: number;
  /** Induced breaks that the measured spin gives this release. */
  readonly spinVerticalM: number;
  readonly spinArmSideM: number;
  /** How far the push of the spin alone takes the ball; null under three inches, where its direction says nothing. */
  readonly pushM: number | null;
  /** The part of the unexplained across that push, positive from 12:00 towards the arm side: the clean evidence of a seam effect. */
  readonly acrossM: number | null;
  /** Covariance in m² [vertical, both, arm side] from path and spin; null where the device does not tell its errors. */
  readonly measurement: readonly [number, number, number] | null;
  /** The same from the spread of the published lift laws. */
  readonly model: readonly [number, number, number];
}

/** `spin-only`: the path was not seen; `axis-inferred`: whatever a seam does is already in the axis; `no-axis`: the device knows none. */
export type HiddenBecause = 'spin-only' | 'axis-inferred' | 'no-axis';

/** `not-visible` is the device's, `not-sent` the frame's: an axis, or a path, that this device could have sent. */
export type UnexplainedReading =
  | UnexplainedView
  | { readonly kind: 'not-visible'; readonly reason: HiddenBecause }
  | { readonly kind: Exclude<Missing, 'not-visible'> };

/** A throw against the fastball baseline aimed at the throw's plate place, both released at the same moment. */
export interface GapView {
  /** The throw's arrival minus the aimed fastball's. */
  readonly aimedArrivalS: number;
  /** From release, at the decision point, which lies `decisionBeforeS` before the fastball arrives. */
  readonly decisionS: number;
  readonly decisionBeforeS: number;
  readonly decisionBasis: Decision['basis'];
  /** Ball widths between the two balls, across the flight. */
  readonly decisionWidths: number;
  /** When the first of the two is at the plate. */
  readonly plateWidths: number;
  /** The gap at 0, lineStepS, 2·lineStepS … up to then; at 0 it is the release shift. */
  readonly lineStepS: number;
  readonly lineWidths: readonly number[];
}

export interface SeparationView {
  readonly baseline: number;
  readonly speedMps: Reading;
  readonly verticalM: Reading;
  readonly armSideM: Reading;
  readonly arrivalS: Reading;
  readonly releaseShiftM: Reading;
}

export interface MissView {
  readonly onTarget: boolean;
  /** Signed distance to the edge of the zone, negative inside, in smallest differences that matter. */
  readonly size: number;
  /** From the throw to the nearest point of the edge: what was lacking. */
  readonly toEdgeVerticalM: number;
  readonly toEdgeArmSideM: number;
  /** Of the zone's centre: the zone of the throw's own stage, which the session may have left. */
  readonly zoneVerticalM: number;
  /** Whether the speed gap lies in its band; null without band or speed. */
  readonly paceOnTarget: boolean | null;
}

export type Estimate =
  | { readonly kind: 'estimate'; readonly mean: number; readonly low: number; readonly high: number; readonly count: number }
  | { readonly kind: 'too-few'; readonly count: number; readonly need: number };

export type SpreadView =
  | {
      readonly kind: 'ellipse';
      /** Of separation: vertical and arm side. */
      readonly verticalM: number;
      readonly armSideM: number;
      readonly semiMajorM: number;
      readonly semiMinorM: number;
      /** From the arm-side axis towards up. */
      readonly angleRad: number;
      readonly areaM2: number;
      readonly areaLowM2: number;
      readonly areaHighM2: number;
      readonly count: number;
    }
  | { readonly kind: 'too-few'; readonly count: number; readonly need: number };

export type ShareView =
  | { readonly kind: 'share'; readonly hits: number; readonly count: number; readonly low: number; readonly high: number }
  | { readonly kind: 'too-few'; readonly count: number; readonly need: number }
  | { readonly kind: 'no-zone' };

export interface WindowView {
  readonly size: 3 | 5 | 10 | 'all';
  readonly count: number;
  readonly speedMps: Estimate;
  readonly verticalM: Estimate;
  readonly armSideM: Estimate;
  readonly arrivalS: Estimate;
  readonly spread: SpreadView;
  readonly onTarget: ShareView;
  readonly meanMiss: Estimate;
}

export interface BaselineView {
  readonly kind: 'baseline';
  readonly number: number;
  readonly stage: Stage;
  readonly count: number;
  readonly origin: 'this-session' | 'earlier';
  /** When its last fastball was thrown. */
  readonly atMs: number;
  readonly speedMps: number;
  readonly speedSpreadMps: number;
  readonly verticalM: number;
  readonly armSideM: number;
  readonly flightTimeS: Reading;
  readonly releaseHeightM: Reading;
  readonly releaseArmSideM: Reading;
  /** In the middle of its fastballs' paths, in a right-hander's terms: a left-hander's mirrored, arm side −x. */
  readonly path: PathView | Missing;
  /** Its fastballs about its centre: [vertical, arm side]. */
  readonly cloud: readonly (readonly [number, number])[];
}
/** From the release on: position at t = 0, velocity there, and one acceleration for the whole flight, in the frame of the plate. */
export interface PathView {
  readonly positionM: readonly [number, number, number];
  readonly velocityMps: readonly [number, number, number];
  readonly accelerationMps2: readonly [number, number, number];
}

export type BaselineState = BaselineView | { readonly kind: 'forming'; readonly have: number; readonly need: number };

export interface TrialView {
  readonly letter: string;
  readonly intent: Intent;
  readonly grip: Grip | null;
  readonly cue: Cue | null;
  /** As said at its beginning; absent where nobody said. */
  readonly family?: Family;
  /** Excluded ones too. */
  readonly count: number;
  readonly excluded: number;
  readonly seamEffect: SeamEffectView;
}

/**
 * Whether the seams push this trial's throws in the present stage: mean and interval of `acrossM`, which holds at every look,
 * against a bound that axis bias and wind may reach.
 */
export type SeamEffectView =
  | { readonly kind: 'seen' | 'not-seen' | 'cannot-tell'; readonly meanM: number; readonly lowM: number; readonly highM: number; readonly boundM: number; readonly count: number }
  | { readonly kind: 'too-few'; readonly count: number; readonly need: number }
  | { readonly kind: 'not-visible'; readonly reason: HiddenBecause };

export interface NoteView {
  /** Place of the note itself in the mound's log. */
  readonly written: number;
  readonly atMs: number;
  readonly text: string;
  readonly place: number | null;
}

export interface SessionView {
  readonly id: string;
  readonly athlete: Athlete;
  readonly timeZone: string;
  readonly openedAtMs: number;
  readonly closedAtMs: number | null;
  /** Throws of the mound belong to it now. */
  readonly active: boolean;
  readonly stage: Stage;
  readonly distanceM: number;
  readonly effort: Effort;
  readonly intent: Intent | null;
  readonly trial: TrialView | null;
  readonly trials: readonly TrialView[];
  readonly baseline: BaselineState;
  readonly zone: TargetZone | null;
  readonly speedBand: SpeedBand | null;
  readonly counts: { readonly all: number; readonly stage: number; readonly trial: number };
  readonly windows: readonly WindowView[];
  readonly notes: readonly NoteView[];
  /** Where the gap of every throw is told, `decisionBeforeS` and `decisionBasis` of its view. */
  readonly decision: Decision;
  /** When the athlete is shown what. */
  readonly feedback: FeedbackView;
  /** Of the athlete's day and last days, as this mound knows them. */
  readonly armCare: ArmCare;
  readonly armTalk: ArmTalk;
  /** What the athlete last said of the present trial in the present stage; null when nothing. */
  readonly comfort: { readonly comfortable: boolean; readonly atMs: number } | null;
  readonly progress: ProgressView;
  readonly honestArm: HonestArm;
  readonly fatigue: FatigueSign;
  /** Null while the fastballs hold to a baseline of this session. */
  readonly baselineDrift: BaselineDrift | null;
  /** Null where none is worth throwing, or may be thrown. */
  readonly nextDaySet: NextDaySet | null;
  /** From a mound, planned for today; null where nobody planned. */
  readonly plannedThrows: number | null;
  /** What the athlete's closed sessions before this one have shown of each family in this stage. */
  readonly triedBefore: readonly TriedFamily[];
  readonly observations: readonly ObservationView[];
  /** Where it came out of a file: its name and hash, whether that says times of day, when it arrived and who brought it. */
  readonly imported?: { readonly file: ImportedFile; readonly times: 'of-throws' | 'of-days'; readonly atMs: number; readonly by: string };
}

/** Everything about a mound but its throws. */
export interface MoundHead {
  readonly mound: string;
  /** Place of the newest fact in it. */
  readonly place: number;
  readonly atMs: number;
  /** Raised by every break: another session on the screen. A chart that sees a new one clears itself. */
  readonly generation: number;
  readonly scienceVersion: number;
  readonly session: SessionView | null;
  readonly openSessions: readonly { readonly id: string; readonly athleteName: string; readonly active: boolean }[];
  /** Of the device that measured the newest throw. */
  readonly source: { readonly device: string; readonly sight: Sight; readonly axis: AxisKnowledge } | null;
  /** The mound's air as last said. */
  readonly air: { readonly atMs: number; readonly air: MoundAir } | null;
  /** Throws that nobody has. */
  readonly unclaimedCount: number;
  /** Those of them that came after the newest throw of the session shown. */
  readonly unclaimedSince: number;
}

/** The view of one mound. `throws` are the newest of the session shown, oldest first; `counts.all` tells how many there are. */
export interface MoundView extends MoundHead {
  readonly throws: readonly ThrowView[];
  /** The newest that nobody has, oldest first; `unclaimedCount` tells how many there are. */
  readonly unclaimed: readonly ThrowView[];
}
