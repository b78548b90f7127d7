import type { TargetZone } from '../../core/facts/coach.ts';
import type { Separation } from './plane-scale.ts';
import type { Ruling } from './ticks.ts';
import type { TurnedEllipse } from './turned-ellipse.ts';
import type { HandleTexts } from './zone-handles.ts';

/** One throw on the plane. */
export interface PlaneMark extends Separation {
  readonly place: number;
  readonly trial: string | null;
  readonly fastball: boolean;
  /** Its movement was inferred from spin: hatched. */
  readonly inferred: boolean;
  /** Null where there is no zone to judge it by. */
  readonly onTarget: boolean | null;
  /** What it was, in words, for a pointer that rests on it. */
  readonly said: string;
}

/** The last throw's way to the nearest edge of the zone, and how that is said. */
export interface PlaneMiss extends Separation {
  readonly toEdgeVerticalM: number;
  readonly toEdgeArmSideM: number;
  readonly words: readonly string[];
}

/** The 95 % ellipse of a window's separations, and how it is named. */
export interface PlaneSpread extends Separation, TurnedEllipse {
  readonly named: string;
}

/** The region of separation that spin alone can reach, and how it is named. */
export interface PlaneReach {
  /** Its corners; the last joins the first. */
  readonly outline: readonly Separation[];
  /** Round the place of no lift, where an arm that spins every ball cannot come; null where there is none. */
  readonly hole: readonly Separation[] | null;
  readonly named: string;
}

/** What the spin of the last throw does not explain: from where the spin alone would have taken it to where it went. */
export interface PlaneUnexplained {
  readonly from: Separation;
  readonly to: Separation;
  /** The 95 % ellipse of the difference; null where nobody knows how sure it is. */
  readonly ellipse: TurnedEllipse | null;
  readonly words: readonly string[];
}

/** What the separation plane shows. SI; up and arm side positive. */
export interface PlaneData {
  /** Another value starts the picture anew. */
  readonly generation: string;
  readonly armSideOn: 'left' | 'right';
  readonly zone: TargetZone | null;
  /** Oldest first. */
  readonly marks: readonly PlaneMark[];
  /** The baseline's fastballs about their centre: vertical, arm side. */
  readonly cloud: readonly (readonly [number, number])[];
  /** Whether there is a fastball to measure from. */
  readonly hasBaseline: boolean;
  readonly miss: PlaneMiss | null;
  readonly spread: PlaneSpread | null;
  readonly reach: PlaneReach | null;
  readonly unexplained: PlaneUnexplained | null;
  readonly ruling: Ruling;
  readonly texts: {
    readonly name: string;
    readonly description: string;
    readonly armSide: string;
    readonly gloveSide: string;
    readonly down: string;
    readonly fastball: string;
    readonly target: string;
    readonly seenFrom: string;
  };
}

export interface PlaneOptions {
  readonly width: number;
  readonly height: number;
  /** Size of every text in the picture. */
  readonly textPx: number;
  /** Whether every mark carries its trial's letter, or only the newest of each trial. */
  readonly letters: 'every' | 'newest';
  /** Given, the zone can be dragged and resized; called while it moves, and once more when it is let go. */
  readonly onZone?: (zone: TargetZone, letGo: boolean) => void;
  readonly handleTexts?: HandleTexts;
}
