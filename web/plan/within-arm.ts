import { ownArm, type OwnArm } from '../../core/coaching/own-arm.ts';
import { proposeTarget, type ProposedTarget } from '../../core/coaching/propose-target.ts';
import { FAMILY_INTENT } from '../../core/coaching/starting-grip.ts';
import { withinReach, type WithinReach } from '../../core/coaching/within-reach.ts';
import type { TargetZone } from '../../core/facts/coach.ts';
import type { BaselineView, MoundView, SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import type { Arm } from '../../core/flight/arm.ts';
import type { ReachRegion } from '../../core/flight/reach.ts';
import { sensitivities, type Sensitivities } from '../../core/flight/sensitivities.ts';
import { airOf } from '../../core/session/air-of.ts';
import { thrownAs } from './evidence.ts';

/** Share of the spin across the flight that a grip can bring about. From memory. */
const GRIP_EFFICIENCY = { low: 0.6, high: 1 } as const;

/**
 * The arm that a plan is made for: speed and spin as the athlete's own throws of that pitch showed them, but every efficiency
 * that a grip can bring about, because the grip is what is being planned.
 */
export function armToPlan(view: MoundView, session: SessionView, baseline: BaselineView, family: Family): OwnArm {
  const own = ownArm({ baseline, thrown: thrownAs(view, session, FAMILY_INTENT[family]), distanceM: session.distanceM, airDensityKgM3: airOf(view.air?.air ?? null).airDensityKgM3 });
  const { low, high } = own.arm.efficiency;
  const efficiency = { low: Math.min(low, GRIP_EFFICIENCY.low), high: Math.max(high, GRIP_EFFICIENCY.high) };
  return { ...own, arm: { ...own.arm, efficiency } };
}

/** A family's target for an athlete, drawn into what spin can reach. */
export function proposalFor(family: Family, { athlete }: SessionView, baseline: BaselineView, reach: ReachRegion | null): ProposedTarget {
  return proposeTarget({ family, hand: athlete.hand, mainFastball: athlete.mainFastball, fastball: baseline, reach });
}

/** What a zone asks of an arm, and how far one step of each thing moves the throw that comes nearest to its middle. */
export interface ZoneTakes extends WithinReach {
  readonly steps: Sensitivities;
}

/** Null when the arm's ball does not get to the plate. */
export function zoneTakes(arm: Arm, zone: TargetZone): ZoneTakes | null {
  const within = withinReach(arm, zone);
  const steps = within === null ? null : sensitivities(arm, within.toCentre.thrown);
  return within === null || steps === null ? null : { ...within, steps };
}
