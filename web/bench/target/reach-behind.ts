import type { Assumed } from '../../../core/coaching/own-arm.ts';
import type { MoundView, SessionView } from '../../../core/facts/views.ts';
import { reachRegion, type ReachRegion } from '../../../core/flight/reach.ts';
import { armToPlan } from '../../reach/arm-to-plan.ts';

/** What lies behind the target: the region that Plan draws too, and what of the arm it is not measured from. */
export interface ReachBehind {
  readonly region: ReachRegion;
  readonly assumed: readonly Assumed[];
}

/** The region that this arm can reach by spin alone with the pitch that is worked on; null without a baseline, and for a pitch that Plan knows nothing of. */
export function reachBehind(view: MoundView, session: SessionView): ReachBehind | null {
  const { baseline, trial, intent } = session;
  const worked = trial?.intent ?? intent ?? 'changeup';
  if (baseline.kind !== 'baseline' || (worked !== 'changeup' && worked !== 'split')) return null;
  const { arm, assumed } = armToPlan(view, session, baseline, worked === 'split' ? 'split' : 'turnover');
  const region = reachRegion(arm);
  return region === null ? null : { region, assumed };
}
