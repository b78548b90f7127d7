import { armCare } from '../../core/coaching/arm-care.ts';
import type { ArmCare, ArmReport, IsoDay } from '../../core/facts/care-view.ts';
import { dayIn } from '../../core/session/local-day.ts';
import { throwsPlanned } from '../../core/session/planned.ts';
import type { AthleteRecord } from './record.ts';

/** Throws from a mound of a bullpen that nobody planned. House rule. */
const USUAL_BULLPEN = 30;

/** The calendar day where the athlete last threw. */
export function todayOf({ sessions }: AthleteRecord, atMs: number): IsoDay {
  return dayIn(sessions[0]!.entry.timeZone, atMs);
}

/** The athlete's arm on a day, over all mounds, held against the day's most and the planned bullpen, by default thirty throws. */
export function armOn({ athlete, sessions, days }: AthleteRecord, today: IsoDay): ArmCare {
  const newest = sessions[0]!.entry;
  const plannedToday = throwsPlanned(newest.planned, today);
  return armCare({
    birthYear: athlete.birthYear,
    today,
    days: days.days,
    pain: upTo(today, days.pain?.report),
    soreness: upTo(today, days.soreness?.report),
    ownDayMost: newest.planned.count?.dayMost ?? null,
    planned: plannedToday ?? USUAL_BULLPEN,
  });
}

/** What was said later is no business of an earlier day. */
function upTo(day: IsoDay, report: ArmReport | undefined): ArmReport | null {
  return report === undefined || report.day > day ? null : report;
}
