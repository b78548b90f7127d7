import { baselineAt, type FastballBaseline } from '../coaching/baseline.ts';
import { separationFrom } from '../coaching/separation.ts';
import { missOf, type Miss } from '../coaching/target.ts';
import type { Athlete } from '../facts/coach.ts';
import type { SeparationView } from '../facts/views.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import type { AnalysedThrow } from './analyse.ts';
import { baselinesOver, fastballsIn, isFastball } from './fastballs.ts';
import type { SessionEntry, ThrowEntry, Thrown } from './ledger.ts';
import { analysisOf } from './memory.ts';
import { zoneIn } from './targets.ts';

/** What the throws of a session are held against. As long as nothing of it changes it is the same object. */
export interface Judging extends Pick<SessionEntry, 'id' | 'athlete' | 'targets' | 'earlier'> {
  /** Of this session, all stages, oldest first in each. */
  readonly baselines: readonly FastballBaseline[];
}

/** A throw of a session, held against the baseline and the target zone of its own stage. */
export interface JudgedThrow {
  readonly analysed: AnalysedThrow;
  readonly baseline: FastballBaseline | null;
  /** Null without a baseline, for an excluded throw and for a measurement that contradicts itself. */
  readonly separation: SeparationView | null;
  /** Null for a fastball, without a zone, and where movement could not be measured. */
  readonly miss: Miss | null;
}

const standing = new WeakMap<Athlete, Judging>();

/** What the throws of a session are held against now. */
export function judgingOf(session: SessionEntry, thrown: Thrown): Judging {
  const { id, athlete, targets, earlier } = session;
  const fastballs = fastballsIn(thrown, session);
  const baselines = STAGES.flatMap((stage) => baselinesOver(fastballs, session, stage));
  const known = standing.get(athlete);
  if (known !== undefined && known.id === id && known.targets === targets && known.earlier === earlier && alike(known.baselines, baselines)) return known;
  const now: Judging = { id, athlete, targets, earlier, baselines };
  standing.set(athlete, now);
  return now;
}

function alike<T>(one: readonly T[], other: readonly T[]): boolean {
  return one.length === other.length && one.every((item, index) => item === other[index]);
}

/** The session's own baselines of a stage, oldest first. */
export function ownBaselines({ baselines }: Judging, stage: Stage): readonly FastballBaseline[] {
  return baselines.filter((baseline) => baseline.stage === stage);
}

const remembered = new WeakMap<ThrowEntry, { readonly judging: Judging; readonly judged: JudgedThrow }>();

/** Of a throw that the session has tagged. */
export function judged(entry: ThrowEntry, judging: Judging): JudgedThrow {
  const known = remembered.get(entry);
  if (known?.judging === judging) return known.judged;
  const now = judgedAnew(entry, judging);
  remembered.set(entry, { judging, judged: now });
  return now;
}

function judgedAnew(entry: ThrowEntry, judging: Judging): JudgedThrow {
  const { stage, excluded } = entry.tags[judging.id]!;
  const analysed = analysisOf(entry, judging);
  const baseline = baselineAt(ownBaselines(judging, stage), entry.place) ?? judging.earlier[stage] ?? null;
  const separation = baseline === null || excluded !== null || analysed.problem !== null ? null : separationFrom(analysed, baseline);
  return { analysed, baseline, separation, miss: isFastball(entry, judging) ? null : missIn(judging, stage, separation) };
}

function missIn(judging: Judging, stage: Stage, separation: SeparationView | null): Miss | null {
  const zone = zoneIn(judging, stage);
  if (separation === null || zone === null) return null;
  const { verticalM, armSideM } = separation;
  return typeof verticalM !== 'number' || typeof armSideM !== 'number' ? null : missOf({ verticalM, armSideM }, zone);
}
