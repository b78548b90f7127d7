import { createContext, useContext, type Accessor } from 'solid-js';
import { armCare } from '../../../core/coaching/arm-care.ts';
import { daysBetween } from '../../../core/coaching/calendar.ts';
import type { ArmCare, ArmReport } from '../../../core/facts/care-view.ts';
import type { SessionView } from '../../../core/facts/views.ts';
import type { AthleteDays, MoundDay } from '../../../core/facts/wire.ts';

/** Days that Bench lists: a rest lasts at most five, and three days running look two back. */
const DAYS_LISTED = 7;

/** An athlete's arm as Bench knows it. */
export interface ArmState {
  readonly care: ArmCare;
  /** Pain that nobody has answered, on whichever mound it was said; null where none stands. */
  readonly pain: ArmReport | null;
  /** The mounds whose throws are counted; null while only this one's are known. */
  readonly mounds: readonly string[] | null;
  /** The last days up to the newest, the latest first. */
  readonly days: readonly MoundDay[];
}

/**
 * The view knows what was said of the arm on any mound, and the throws of this one; the server's answer adds those that
 * are thrown on others meanwhile.
 */
export function armState({ armCare: here, athlete, plannedThrows }: Pick<SessionView, 'armCare' | 'athlete' | 'plannedThrows'>, mound: string, known: AthleteDays | null): ArmState {
  const pain = here.kind === 'pain-reported' ? here.report : null;
  if (known === null) return { care: here, pain, mounds: null, days: [] };
  const care = armCare({
    birthYear: athlete.birthYear,
    today: here.day,
    days: known.days,
    pain,
    soreness: here.kind === 'soreness-reported' ? here.report : null,
    ownDayMost: here.dayMostFrom === 'own-rule' ? here.dayMost : null,
    planned: plannedThrows,
  });
  const days = known.days.filter(({ day }) => daysBetween(day, here.day) >= 0 && daysBetween(day, here.day) < DAYS_LISTED);
  return { care, pain, mounds: [...new Set([mound, ...days.map((one) => one.mound)])].sort(), days: days.reverse() };
}

const ArmContext = createContext<Accessor<ArmState | null>>();
export const ArmProvider = ArmContext.Provider;

/** The arm of whoever has the mound; null without a session. A part outside of Bench is a bug. */
export function useArm(): Accessor<ArmState | null> {
  const arm = useContext(ArmContext);
  if (arm === undefined) throw new Error('a part of Bench was drawn outside of Bench');
  return arm;
}
