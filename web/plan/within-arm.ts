import { proposeTarget, type ProposedTarget } from '../../core/coaching/propose-target.ts';
import { withinReach, type WithinReach } from '../../core/coaching/within-reach.ts';
import type { TargetZone } from '../../core/facts/coach.ts';
import type { BaselineView, SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import type { Arm } from '../../core/flight/arm.ts';
import type { ReachRegion } from '../../core/flight/reach.ts';
import { liftDoubtM } from '../../core/flight/lift-doubt.ts';
import { sensitivities, type Sensitivities } from '../../core/flight/sensitivities.ts';

/** A family's target for an athlete, drawn into what spin can reach. */
export function proposalFor(family: Family, { athlete }: SessionView, baseline: BaselineView, reach: ReachRegion | null): ProposedTarget {
  return proposeTarget({ family, mainFastball: athlete.mainFastball, fastball: baseline, reach });
}

/** What a zone asks of an arm, and how far one step of each thing moves the throw that comes nearest to its middle. */
export interface ZoneTakes extends WithinReach {
  readonly steps: Sensitivities;
  /** Of where the throw that comes nearest to the zone gets by spin: what the published lift laws leave open. */
  readonly doubtM: number;
}

/** Null when the arm's ball does not get to the plate. */
export function zoneTakes(arm: Arm, zone: TargetZone): ZoneTakes | null {
  const within = withinReach(arm, zone);
  const steps = within === null ? null : sensitivities(arm, within.toCentre.thrown);
  const doubtM = within === null ? null : liftDoubtM(arm, within.toZone.thrown);
  return within === null || steps === null || doubtM === null ? null : { ...within, steps, doubtM };
}
