import type { FastballBaseline } from '../coaching/baseline.ts';
import type { TriedFamily } from '../facts/advice-view.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { NOTHING_KNOWN, type PlansKnown } from './plans-known.ts';
import type { TargetsByStage } from './targets.ts';

export type BaselinesByStage = Readonly<Partial<Record<Stage, FastballBaseline>>>;
export type NumbersByStage = Readonly<Partial<Record<Stage, number>>>;

/** What one day has shown of one family in one stage. */
export interface StageTried {
  readonly stage: Stage;
  readonly tried: TriedFamily;
}

/** What the other mounds know of an athlete, as the server last told it. What belongs to an athlete has no mound. */
export interface AthleteBrought {
  readonly targets: TargetsByStage;
  readonly baselines: BaselinesByStage;
  readonly baselinesGiven: NumbersByStage;
  /** Of closed sessions there. */
  readonly tried: readonly StageTried[];
  /** The highest number of a comparison there; 0 without one. */
  readonly comparisons: number;
  readonly plans: PlansKnown;
}
export const NOTHING_ELSEWHERE: AthleteBrought = { targets: {}, baselines: {}, baselinesGiven: {}, tried: [], comparisons: 0, plans: NOTHING_KNOWN };
