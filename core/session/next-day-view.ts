import { mayThrow } from '../coaching/arm-care.ts';
import { isLater, reasonForSet, setSize, type SetReason, type WorkedDay } from '../coaching/next-day-set.ts';
import { DEFAULT_GATE } from '../coaching/progression.ts';
import type { NextDaySet } from '../facts/advice-view.ts';
import type { ArmCare } from '../facts/care-view.ts';
import type { SessionEntry } from './ledger.ts';
import type { FoundBetter } from './found-better.ts';
import type { WorkedStage } from './plans-known.ts';
import type { Sums } from './sums.ts';
import type { TrialEntry } from './trial-entry.ts';
import { workOf } from './work.ts';
import { keptOfWork } from './work-sums.ts';

/** The set without feedback that is thrown in the present stage; else the one that is worth throwing, found better before near a gate. */
export function nextDayView(session: SessionEntry, sums: Sums, care: ArmCare): NextDaySet | null {
  return thrownSet(session, sums) ?? (session.closedAtMs === null ? offeredSet(session, sums, care) : null);
}

/** The newest trial that was worked on a day or more before and has been thrown without feedback only. */
function thrownSet(session: SessionEntry, sums: Sums): NextDaySet | null {
  for (const trial of session.trials.toReversed()) {
    const before = workedBefore(session, trial).at(-1);
    if (before === undefined) continue;
    const { throws, hits, judged, first, loud } = keptOfWork(sums.works, session.stage, workOf(trial), session.trials);
    if (!isLater(before, first?.atMs ?? nowMs(session, sums))) continue;
    const begun = throws > 0 || (trial.letter === session.trial && session.told.feedback.mode.kind === 'none');
    if (!begun || loud > 0) continue;
    return { kind: 'thrown', letter: trial.letter, throws, hits, judged, before: shown(before) };
  }
  return null;
}

/** A trial that was thrown today already is being practised again, and no longer shows what a night has left. */
function offeredSet(session: SessionEntry, sums: Sums, care: ArmCare): NextDaySet | null {
  const size = mayThrow(care) ? setSize(care) : null;
  if (size === null) return null;
  const { shareAbove } = session.planned.gates[session.stage]?.gate ?? DEFAULT_GATE;
  const worked = session.planned.worked.flat().filter(({ stage }) => stage === session.stage);
  const wanted = [...new Set(worked.map(({ work }) => work))].flatMap((work) => {
    const days = worked.filter((one) => one.work === work);
    const last = days.at(-1)!;
    const because = keptOfWork(sums.works, session.stage, work, session.trials).throws > 0 ? null : reasonForSet(withBetter(days, session.planned.better), shareAbove, nowMs(session, sums));
    return because === null ? [] : [{ last, because }];
  });
  const best = wanted.toSorted((a, b) => rank(a.because) - rank(b.because) || b.last.lastAtMs - a.last.lastAtMs)[0];
  if (best === undefined) return null;
  const { letter: _, ...trial } = best.last.trial;
  const resume = session.trials.findLast((one) => workOf(one) === best.last.work)?.letter ?? null;
  return { kind: 'offered', trial, because: best.because, before: shown(best.last), throws: size, resume };
}

/** What a comparison found better counts for the last day that it holds, so that it is asked again once. */
function withBetter(days: readonly WorkedStage[], better: readonly FoundBetter[]): (WorkedStage & Pick<WorkedDay, 'better'>)[] {
  const found = new Set(better.map(({ stage, work, lastAtMs }) => days.findLast((one) => one.stage === stage && one.work === work && one.firstAtMs <= lastAtMs)));
  return days.map((one) => ({ ...one, better: found.has(one) }));
}

const rank = (because: SetReason): number => (because === 'found-better' ? 0 : 1);

/** The session's own time, so that a recording says what was said live. */
function nowMs({ openedAtMs, stage }: SessionEntry, { stages }: Sums): number {
  return Math.max(openedAtMs, stages[stage]?.lastWorkedAtMs ?? openedAtMs);
}

function workedBefore({ planned, stage }: SessionEntry, trial: TrialEntry): WorkedStage[] {
  const work = workOf(trial);
  return planned.worked.flat().filter((one) => one.stage === stage && one.work === work);
}

function shown({ trial, day, hits, judged }: WorkedStage): Extract<NextDaySet, { kind: 'thrown' }>['before'] {
  return { letter: trial.letter, day, hits, judged };
}
