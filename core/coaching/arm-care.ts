import type { ArmCare, ArmReport, Counted, IsoDay, MayThrow, NextDay, RestReason, ThrowCount, ThrowingDay } from '../facts/care-view.ts';
import { EFFORTS, STAGES } from '../facts/vocabulary.ts';
import { youngerAge } from './age.ts';
import { GUIDELINE, guidelineRow, restDaysAfter, type GuidelineRow } from './arm-care-guideline.ts';
import { dayAfter, daysBetween, yearOf } from './calendar.ts';

export interface ArmCareInput {
  readonly birthYear: number;
  readonly today: IsoDay;
  /** In any order; one that is later than today is not read. */
  readonly days: readonly ThrowingDay[];
  /** Pain or numbness that nobody has answered; from whatever day. */
  readonly pain: ArmReport | null;
  /** Soreness said; it counts on its own day. */
  readonly soreness: ArmReport | null;
  /** A rule of league or club: it can only be stricter than the guideline. */
  readonly ownDayMost: number | null;
  /** Throws from a mound that the coach has planned for today, if any. */
  readonly planned: number | null;
}

/** From this share of the day's most on the tool warns. */
const NEAR_SHARE = 0.75;
/** A rest lasts at most five days, and three days running look two back. */
export const DAYS_LOOKED_BACK = 7;

/**
 * An athlete's throws of today against the guideline, and what the last days ask for. Every tracked throw is counted;
 * the mound total is held against the most of one day, which the guideline means for games (house rule: practice loads
 * the arm as well). Reported pain comes before any count.
 */
export function armCare(input: ArmCareInput): ArmCare {
  const counted = countedToday(input);
  const { pain, soreness, today } = input;
  if (pain !== null) return { ...counted, kind: 'pain-reported', report: pain };
  if (soreness !== null && soreness.day === today) return { ...counted, kind: 'soreness-reported', report: soreness };
  const until = nextDay(input, false);
  if (until !== null && daysBetween(today, until.day) > 0) return { ...counted, kind: 'rest-due', until };
  const earliestNextDay = nextDay(input, true);
  const { moundThrows, dayMost } = counted;
  if (moundThrows >= dayMost) return { ...counted, kind: 'reached', earliestNextDay };
  const left = Math.min(dayMost - moundThrows, Math.max(0, (input.planned ?? Infinity) - moundThrows));
  return { ...counted, kind: moundThrows >= NEAR_SHARE * dayMost ? 'near' : 'under', left, earliestNextDay };
}

/** Whether advice to throw is possible at all. */
export function mayThrow(care: ArmCare): care is MayThrow {
  return care.kind === 'under' || care.kind === 'near';
}

function countedToday(input: ArmCareInput): Counted {
  const { birthYear, today, ownDayMost } = input;
  const age = youngerAge(birthYear, yearOf(today));
  const { row, house } = guidelineRow(age);
  const throws = input.days.filter(({ day }) => day === today).flatMap((one) => one.throws);
  const moundThrows = fromMound(throws);
  const rules = ['practice-counted' as const, house, restDaysAfter(moundThrows, row).house].filter((rule) => rule !== null);
  return {
    day: today,
    today: byKind(throws),
    moundThrows,
    dayMost: Math.min(row.dayMost, ownDayMost ?? Infinity),
    dayMostFrom: ownDayMost !== null && ownDayMost < row.dayMost ? 'own-rule' : 'guideline',
    source: { version: GUIDELINE.version, mark: GUIDELINE.mark, age, rowFromAge: row.fromAge, rowToAge: row.toAge, house: rules },
  };
}

/** The latest of the days that each mound day asks for, today counted or not; null where none asks. */
function nextDay({ birthYear, days, today }: ArmCareInput, withToday: boolean): NextDay | null {
  const mound = moundTotals(days.filter(({ day }) => daysBetween(day, today) >= (withToday ? 0 : 1) && daysBetween(day, today) <= DAYS_LOOKED_BACK));
  const asked = [...mound].flatMap(([day, total]): { day: IsoDay; reason: RestReason }[] => {
    const { restDays } = restDaysAfter(total, rowOn(day, birthYear));
    const rest = { day: dayAfter(day, 1 + restDays), reason: 'rest-days' as const };
    return mound.has(dayAfter(day, -1)) ? [rest, { day: dayAfter(day, 2), reason: 'third-day-running' }] : [rest];
  });
  if (asked.length === 0) return null;
  const latest = asked.map(({ day }) => day).sort().at(-1)!;
  return { day: latest, reasons: [...new Set(asked.filter(({ day }) => day === latest).map(({ reason }) => reason))] };
}

function rowOn(day: IsoDay, birthYear: number): GuidelineRow {
  return guidelineRow(youngerAge(birthYear, yearOf(day))).row;
}

function moundTotals(days: readonly ThrowingDay[]): Map<IsoDay, number> {
  const totals = new Map<IsoDay, number>();
  for (const { day, throws } of days) {
    const total = (totals.get(day) ?? 0) + fromMound(throws);
    if (total > 0) totals.set(day, total);
  }
  return totals;
}

function fromMound(throws: readonly ThrowCount[]): number {
  return throws.filter(({ stage }) => stage === 'mound' || stage === 'hitters').reduce((sum, { count }) => sum + count, 0);
}

/** One entry for each stage and effort, the same kind from two mounds added up, in the order of stages whichever came first. */
function byKind(throws: readonly ThrowCount[]): ThrowCount[] {
  const kinds = new Map<string, ThrowCount>();
  for (const one of throws) {
    const key = `${one.stage}/${one.effort}`;
    kinds.set(key, { ...one, count: (kinds.get(key)?.count ?? 0) + one.count });
  }
  const rank = ({ stage, effort }: ThrowCount): number => STAGES.indexOf(stage) * EFFORTS.length + EFFORTS.indexOf(effort);
  return [...kinds.values()].sort((a, b) => rank(a) - rank(b));
}
