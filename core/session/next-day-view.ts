import { mayThrow } from '../coaching/arm-care.ts';
import { isLater, reasonForSet, setSize, type SetReason, type WorkedDay } from '../coaching/next-day-set.ts';
import { DEFAULT_GATE } from '../coaching/progression.ts';
import type { NextDaySet } from '../facts/advice-view.ts';
import type { ArmCare } from '../facts/care-view.ts';
import type { ThrowView } from '../facts/views.ts';
import type { SessionEntry } from './ledger.ts';
import type { FoundBetter } from './found-better.ts';
import type { WorkedStage } from './plans-known.ts';
import { wasQuiet } from './told.ts';
import type { TrialEntry } from './trial-entry.ts';
import { throwsOfWork, workOf } from './work.ts';

/** The set without feedback that is thrown in the present stage; else the one that is worth throwing, found better before near a gate. */
export function nextDayView(session: SessionEntry, throws: readonly ThrowView[], care: ArmCare): NextDaySet | null {
  const here = throws.filter(({ stage, fastball, excluded }) => stage === session.stage && !fastball && excluded === null);
  return thrownSet(session, here) ?? (session.closedAtMs === null ? offeredSet(session, here, care) : null);
}

/** The newest trial that was worked on a day or more before and has been thrown without feedback only. */
function thrownSet(session: SessionEntry, here: readonly ThrowView[]): NextDaySet | null {
  for (const trial of session.trials.toReversed()) {
    const before = workedBefore(session, trial).at(-1);
    const own = throwsOfWork(workOf(trial), session.trials, here);
    if (before === undefined || !isLater(before, own[0]?.atMs ?? nowMs(session, here))) continue;
    const begun = own.length > 0 || (trial.letter === session.trial && session.told.feedback.mode.kind === 'none');
    if (!begun || own.some(({ place }) => !wasQuiet(session.told, place))) continue;
    const judged = own.flatMap(({ miss }) => (miss === null ? [] : [miss.onTarget]));
    return { kind: 'thrown', letter: trial.letter, throws: own.length, hits: judged.filter(Boolean).length, judged: judged.length, before: shown(before) };
  }
  return null;
}

/** A trial that was thrown today already is being practised again, and no longer shows what a night has left. */
function offeredSet(session: SessionEntry, here: readonly ThrowView[], care: ArmCare): NextDaySet | null {
  const size = mayThrow(care) ? setSize(care) : null;
  if (size === null) return null;
  const { shareAbove } = session.planned.gates[session.stage]?.gate ?? DEFAULT_GATE;
  const worked = session.planned.worked.filter(({ stage }) => stage === session.stage);
  const wanted = [...new Set(worked.map(({ work }) => work))].flatMap((work) => {
    const days = worked.filter((one) => one.work === work);
    const last = days.at(-1)!;
    const because = throwsOfWork(work, session.trials, here).length > 0 ? null : reasonForSet(withBetter(days, session.planned.better), shareAbove, nowMs(session, here));
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
function nowMs({ openedAtMs }: SessionEntry, here: readonly ThrowView[]): number {
  return Math.max(openedAtMs, here.at(-1)?.atMs ?? openedAtMs);
}

function workedBefore({ planned, stage }: SessionEntry, trial: TrialEntry): WorkedStage[] {
  const work = workOf(trial);
  return planned.worked.filter((one) => one.stage === stage && one.work === work);
}

function shown({ trial, day, hits, judged }: WorkedStage): Extract<NextDaySet, { kind: 'thrown' }>['before'] {
  return { letter: trial.letter, day, hits, judged };
}
