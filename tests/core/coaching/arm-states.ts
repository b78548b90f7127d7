import { armCare, mayThrow } from '../../../core/coaching/arm-care.ts';
import type { ArmCare, ArmReport, MayThrow } from '../../../core/facts/care-view.ts';

const TODAY = '2026-04-30';
const REPORT: ArmReport = { atMs: 1, day: TODAY, from: 'glance', said: 'pain', areas: ['elbow'] };

/** An arm of 15 to 16 years that has thrown so many from the mound today. */
export function armAfter(moundThrows: number, more: { readonly pain?: boolean; readonly planned?: number } = {}): ArmCare {
  const days = moundThrows === 0 ? [] : [{ day: TODAY, throws: [{ stage: 'mound', effort: 'full', count: moundThrows } as const] }];
  return armCare({ birthYear: 2010, today: TODAY, days, pain: more.pain === true ? REPORT : null, soreness: null, ownDayMost: null, planned: more.planned ?? null });
}

/** The same, known to be in a state in which advice is possible. */
export function armThatMayThrow(moundThrows: number, planned: number): MayThrow {
  const care = armAfter(moundThrows, { planned });
  if (!mayThrow(care)) throw new Error(`${moundThrows} throws leave this arm ${care.kind}`);
  return care;
}
