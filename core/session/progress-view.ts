import { DEFAULT_GATE, gateState, stageAdvice, type StageWork } from '../coaching/progression.ts';
import type { PassedGate, ProgressView, StageProgress } from '../facts/advice-view.ts';
import type { ArmCare } from '../facts/care-view.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import { anytimeShareLowerBound } from '../statistics/share-lower-bound.ts';
import type { SessionEntry } from './ledger.ts';
import type { PassedWork, StageComfort } from './plans-known.ts';
import { zoneIn } from './targets.ts';
import type { Sums } from './sums.ts';
import { workOf } from './work.ts';
import { keptOfWork } from './work-sums.ts';
import { comfortAfter } from './worked-here.ts';

const ALPHA = 0.05;

/** The present trial's way through the stages; what counts gathers over the days of one stage. */
export function progressView(session: SessionEntry, works: Sums['works'], care: ArmCare): ProgressView {
  const trial = session.trials.find(({ letter }) => letter === session.trial);
  const present = trial === undefined ? null : presentWork(session, workOf(trial), works);
  const stages = STAGES.map((stage) => progressIn(session, stage, present));
  const now = stages[STAGES.indexOf(session.stage)]!;
  return { advice: now.work === null ? null : stageAdvice(care, toJudge(now, now.work)), stages };
}

/** What is worked on, in all stages. */
interface PresentWork {
  readonly work: string;
  /** What this session's trials add up to. */
  readonly works: Sums['works'];
  readonly comfort: readonly StageComfort[];
}

function presentWork(session: SessionEntry, work: string, works: Sums['works']): PresentWork {
  return { work, works, comfort: comfortAfter(session.planned.comfort, session).filter((said) => said.work === work) };
}

function progressIn(session: SessionEntry, stage: Stage, present: PresentWork | null): StageProgress {
  const { planned } = session;
  const gate = planned.gates[stage]?.gate ?? DEFAULT_GATE;
  const hasZone = zoneIn(session, stage) !== null;
  if (present === null) return { stage, gate, hasZone, work: null, passed: [] };
  const days = daysIn(session, stage, present);
  const sum = (of: (day: (typeof days)[number]) => number): number => days.reduce((total, day) => total + of(day), 0);
  const [hits, judged] = [sum((day) => day.hits), sum((day) => day.judged)];
  const said = present.comfort.find((one) => one.stage === stage);
  const comfort = said === undefined ? null : { comfortable: said.comfortable, atMs: said.atMs };
  const work = { comfort, hits, judged, shareLowerBound: anytimeShareLowerBound(hits, judged, ALPHA), days };
  return {
    stage, gate, hasZone,
    work: { ...work, state: gateState(toJudge({ stage, gate, hasZone }, work)) },
    passed: [...planned.passedBefore, ...planned.passed].filter((one) => one.stage === stage && one.work === present.work).map(passedGate),
  };
}

type Gathered = Pick<NonNullable<StageProgress['work']>, 'comfort' | 'hits' | 'judged' | 'shareLowerBound'>;

function toJudge({ stage, gate, hasZone }: Pick<StageProgress, 'stage' | 'gate' | 'hasZone'>, { comfort, hits, judged, shareLowerBound }: Gathered): StageWork {
  return { stage, gate, hasZone, comfortable: comfort?.comfortable ?? null, hits, judged, shareLowerBound };
}

/** Of earlier sessions, and today where it was thrown today. */
function daysIn(session: SessionEntry, stage: Stage, { work, works }: PresentWork): NonNullable<StageProgress['work']>['days'] {
  const own = keptOfWork(works, stage, work, session.trials);
  const before = session.planned.worked.flat().filter((one) => one.stage === stage && one.work === work);
  return [
    ...before.map(({ day, throws: count, hits, judged: of }) => ({ day, throws: count, hits, judged: of })),
    ...(own.throws === 0 ? [] : [{ day: session.openedDay, throws: own.throws, hits: own.hits, judged: own.judged }]),
  ];
}

function passedGate({ stage, trial, atMs, reason }: PassedWork): PassedGate {
  return { stage, trial, atMs, reason };
}
