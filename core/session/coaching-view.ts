import { armCare } from '../coaching/arm-care.ts';
import { feedbackNow, feedbackSource } from '../coaching/feedback.ts';
import type { ArmCare, ArmTalk, IsoDay } from '../facts/care-view.ts';
import type { FeedbackView } from '../facts/feedback-view.ts';
import type { SessionView, ThrowView } from '../facts/views.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import { throwsPlanned } from './planned.ts';
import { daysOf, tagsOf } from './throwing-days.ts';
import type { Told } from './told.ts';

/** After so many throws fatigue and pain are asked about again. House rule. */
const ASK_ARM_EVERY = 15;

/** What the athlete is shown now. Fastballs and excluded throws are no feedback's business. */
export function feedbackView({ feedback, guesses }: Told, throws: readonly ThrowView[]): FeedbackView {
  const { mode, askFirst, sincePlace } = feedback;
  const judged = throws
    .filter(({ place, fastball, excluded }) => place > sincePlace && !fastball && excluded === null)
    .map(({ place, miss }) => ({ place, onTarget: miss?.onTarget ?? null, guessed: guesses[place] !== undefined }));
  return { mode, askFirst, now: feedbackNow(mode, askFirst, judged), guess: guesses[judged.at(-1)?.place ?? 0] ?? null, basis: feedbackSource(mode) };
}

/** As of the last day of the session: its opening, its newest throw or its newest report. */
export function armCareView({ athlete, openedDay, told, planned }: SessionEntry, entries: readonly ThrowEntry[]): ArmCare {
  const own = daysOf(tagsOf(entries));
  const today: IsoDay = [openedDay, own.at(-1)?.day ?? openedDay, told.lastReport?.report.day ?? openedDay].sort().at(-1)!;
  const { before, pain, soreness } = told;
  return armCare({ birthYear: athlete.birthYear, today, days: [...before, ...own], pain, soreness, ownDayMost: planned.count?.dayMost ?? null, planned: throwsPlanned(planned, today) });
}

export function armTalkView({ lastReport, lastAnswer }: Told, entries: readonly ThrowEntry[]): ArmTalk {
  const since = entries.filter(({ place }) => place > (lastReport?.place ?? 0)).length;
  return { questionDue: since >= ASK_ARM_EVERY, lastReport: lastReport?.report ?? null, lastAnswer };
}

export function comfortView({ told, stage, trial }: SessionEntry): SessionView['comfort'] {
  const last = told.comfort.findLast((said) => said.stage === stage && said.trial === trial);
  return last === undefined ? null : { comfortable: last.comfortable, atMs: last.atMs };
}
