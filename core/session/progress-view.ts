import { DEFAULT_GATE, gateState, stageAdvice, type StageWork } from '../coaching/progression.ts';
import type { PassedGate, ProgressView, StageProgress } from '../facts/advice-view.ts';
import type { ArmCare } from '../facts/care-view.ts';
import type { ThrowView } from '../facts/views.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import { anytimeShareLowerBound } from '../statistics/share-lower-bound.ts';
import type { SessionEntry } from './ledger.ts';
import type { PassedWork } from './planned.ts';
import { zoneIn } from './targets.ts';
import type { TrialEntry } from './trial-entry.ts';
import { workOf } from './work.ts';
import { comfortAfter } from './worked-here.ts';

const ALPHA = 0.05;

/** The present trial's way through the stages; what counts gathers over the days of one stage. */
export function progressView(session: SessionEntry, throws: readonly ThrowView[], care: ArmCare): ProgressView {
  const trial = session.trials.find(({ letter }) => letter === session.trial) ?? null;
  const stages = STAGES.map((one) => progressIn(session, one, throws, trial));
  const now = stages[STAGES.indexOf(session.stage)]!;
  return { advice: now.work === null ? null : stageAdvice(care, toJudge(now, now.work)), stages };
}

function progressIn(session: SessionEntry, stage: Stage, throws: readonly ThrowView[], trial: TrialEntry | null): StageProgress {
  const { planned } = session;
  const about = { stage, gate: planned.gates[stage] ?? DEFAULT_GATE, hasZone: zoneIn(session, stage) !== null };
  if (trial === null) return { ...about, work: null, passed: [] };
  const name = workOf(trial);
  const days = daysIn(session, stage, throws, name);
  const sum = (of: (day: (typeof days)[number]) => number): number => days.reduce((total, day) => total + of(day), 0);
  const [hits, judged] = [sum((day) => day.hits), sum((day) => day.judged)];
  const said = comfortAfter(planned.comfort, session).find((one) => one.stage === stage && one.work === name);
  const comfort = said === undefined ? null : { comfortable: said.comfortable, atMs: said.atMs };
  const work = { comfort, hits, judged, shareLowerBound: anytimeShareLowerBound(hits, judged, ALPHA), days };
  return {
    ...about,
    work: { ...work, state: gateState(toJudge(about, work)) },
    passed: [...planned.passedBefore, ...planned.passed].filter((one) => one.stage === stage && one.work === name).map(passedGate),
  };
}

type Gathered = Pick<NonNullable<StageProgress['work']>, 'comfort' | 'hits' | 'judged' | 'shareLowerBound'>;

function toJudge({ stage, gate, hasZone }: Pick<StageProgress, 'stage' | 'gate' | 'hasZone'>, { comfort, hits, judged, shareLowerBound }: Gathered): StageWork {
  return { stage, gate, hasZone, comfortable: comfort?.comfortable ?? null, hits, judged, shareLowerBound };
}

/** Of earlier sessions, and today where it was thrown today. */
function daysIn(session: SessionEntry, stage: Stage, throws: readonly ThrowView[], work: string): NonNullable<StageProgress['work']>['days'] {
  const letters = new Set(session.trials.filter((trial) => workOf(trial) === work).map(({ letter }) => letter));
  const own = throws.filter((one) => one.stage === stage && one.trial !== null && letters.has(one.trial) && !one.fastball && one.excluded === null);
  const judged = own.flatMap(({ miss }) => (miss === null ? [] : [miss.onTarget]));
  const before = session.planned.worked.filter((one) => one.stage === stage && one.work === work);
  return [
    ...before.map(({ day, throws: count, hits, judged: of }) => ({ day, throws: count, hits, judged: of })),
    ...(own.length === 0 ? [] : [{ day: session.openedDay, throws: own.length, hits: judged.filter(Boolean).length, judged: judged.length }]),
  ];
}

function passedGate({ stage, trial, atMs, reason }: PassedWork): PassedGate {
  return { stage, trial, atMs, reason };
}
