import { ownArm, type OwnArm } from '../../core/coaching/own-arm.ts';
import { FAMILY_INTENT } from '../../core/coaching/starting-grip.ts';
import type { BaselineView, MoundView, SessionView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { airOf } from '../../core/session/air-of.ts';
import { thrownAs } from './sound-throws.ts';

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
