import { mayThrow } from '../../core/coaching/arm-care.ts';
import type { ArmCare } from '../../core/facts/care-view.ts';

/** How far a plan may go. `plan`: it can be made, but not thrown today. `nothing`: only the medical sentence. */
export type MayAdvise = 'throw' | 'plan' | 'nothing';

/** Soreness and pain stop every advice; a day's most that is reached, or rest that is due, stops only the throwing. */
export function mayAdvise(care: ArmCare): MayAdvise {
  if (care.kind === 'pain-reported' || care.kind === 'soreness-reported') return 'nothing';
  return mayThrow(care) ? 'throw' : 'plan';
}
