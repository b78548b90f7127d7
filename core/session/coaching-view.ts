import { armCare } from '../coaching/arm-care.ts';
import { feedbackNow, feedbackSource } from '../coaching/feedback.ts';
import type { ArmCare, ArmTalk, IsoDay } from '../facts/care-view.ts';
import type { FeedbackView } from '../facts/feedback-view.ts';
import type { SessionView } from '../facts/views.ts';
import type { SessionEntry, Thrown } from './ledger.ts';
import { throwsPlanned } from './planned.ts';
import type { Sums } from './sums.ts';
import { inOrder } from './throwing-days.ts';
import { countAfter } from './thrown.ts';
import type { Told } from './told.ts';

/** After so many throws fatigue and pain are asked about again. House rule. */
const ASK_ARM_EVERY = 15;

/** What the athlete is shown now. Fastballs and excluded throws are no feedback's business. */
export function feedbackView({ feedback: { mode, askFirst }, guesses }: Told, { count, newest }: Sums['feedback']): FeedbackView {
  const judged = newest.map(({ place, onTarget }) => ({ place, onTarget, guessed: guesses[place] !== undefined }));
  return { mode, askFirst, now: feedbackNow(mode, askFirst, judged, count), guess: guesses[judged.at(-1)?.place ?? 0] ?? null, basis: feedbackSource(mode) };
}

/** As of the last day of the session: its opening, its newest throw or its newest report. */
export function armCareView({ athlete, openedDay, told, planned }: SessionEntry, thrown: Sums['days']): ArmCare {
  const own = inOrder(thrown);
  const today: IsoDay = [openedDay, own.at(-1)?.day ?? openedDay, told.lastReport?.report.day ?? openedDay].sort().at(-1)!;
  const { before, pain, soreness } = told;
  return armCare({ birthYear: athlete.birthYear, today, days: [...before, ...own], pain, soreness, ownDayMost: planned.count?.dayMost ?? null, planned: throwsPlanned(planned, today) });
}

export function armTalkView({ lastReport, lastAnswer }: Told, thrown: Thrown): ArmTalk {
  return { questionDue: countAfter(thrown, lastReport?.place ?? 0) >= ASK_ARM_EVERY, lastReport: lastReport?.report ?? null, lastAnswer };
}

export function comfortView({ told, stage, trial }: SessionEntry): SessionView['comfort'] {
  const last = told.comfort.findLast((said) => said.stage === stage && said.trial === trial);
  return last === undefined ? null : { comfortable: last.comfortable, atMs: last.atMs };
}
