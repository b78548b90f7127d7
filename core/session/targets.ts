import type { SpeedBand, TargetZone } from '../facts/coach.ts';
import type { Stage } from '../facts/vocabulary.ts';

/** What is worked towards in one stage. */
export interface StageTarget {
  /** Null once it was taken away. */
  readonly zone: TargetZone | null;
  readonly speedBand: SpeedBand | null;
  /** When it was said: of two mounds the later one holds. */
  readonly saidAtMs: number;
}

/** A stage has a target of its own or none: what is worked towards from the mound says nothing about catch play. */
export type TargetsByStage = Readonly<Partial<Record<Stage, StageTarget>>>;

interface HasTargets {
  readonly targets: TargetsByStage;
}

/** The target zone of a stage; null where the stage has none. */
export function zoneIn({ targets }: HasTargets, stage: Stage): TargetZone | null {
  return targets[stage]?.zone ?? null;
}

/** The band of the speed gap of a stage; null where the stage has none. */
export function speedBandIn({ targets }: HasTargets, stage: Stage): SpeedBand | null {
  return targets[stage]?.speedBand ?? null;
}
