import { baselineAt, type FastballBaseline } from '../coaching/baseline.ts';
import { separationFrom } from '../coaching/separation.ts';
import { missOf, type Miss } from '../coaching/target.ts';
import type { SeparationView } from '../facts/views.ts';
import type { Stage } from '../facts/vocabulary.ts';
import type { AnalysedThrow } from './analyse.ts';
import { isFastball, sessionBaselines } from './fastballs.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';
import { zoneIn } from './targets.ts';

/** A throw of a session, held against the baseline and the target zone of its own stage. */
interface JudgedThrow {
  readonly analysed: AnalysedThrow;
  readonly baseline: FastballBaseline | null;
  /** Null without a baseline, for an excluded throw and for a measurement that contradicts itself. */
  readonly separation: SeparationView | null;
  /** Null for a fastball, without a zone, and where movement could not be measured. */
  readonly miss: Miss | null;
}

/** The baselines of a session, oldest first, by stage. */
export type StageBaselines = (stage: Stage) => readonly FastballBaseline[];

/** Each stage is worked out once, when it is first asked for. */
export function stageBaselines(session: SessionEntry, entries: readonly ThrowEntry[]): StageBaselines {
  const byStage = new Map<Stage, readonly FastballBaseline[]>();
  return (stage) => {
    const known = byStage.get(stage) ?? sessionBaselines(entries, session, stage);
    byStage.set(stage, known);
    return known;
  };
}

/** Of a throw that the session has tagged. */
export function judged(entry: ThrowEntry, session: SessionEntry, baselines: StageBaselines): JudgedThrow {
  const { stage, excluded } = entry.tags[session.id]!;
  const analysed = analysisOf(entry, session);
  const baseline = baselineAt(baselines(stage), entry.place) ?? session.earlier[stage] ?? null;
  const separation = baseline === null || excluded !== null || analysed.problem !== null ? null : separationFrom(analysed, baseline);
  return { analysed, baseline, separation, miss: isFastball(entry, session) ? null : missIn(session, stage, separation) };
}

function missIn(session: SessionEntry, stage: Stage, separation: SeparationView | null): Miss | null {
  const zone = zoneIn(session, stage);
  if (separation === null || zone === null) return null;
  const { verticalM, armSideM } = separation;
  return typeof verticalM !== 'number' || typeof armSideM !== 'number' ? null : missOf({ verticalM, armSideM }, zone);
}
