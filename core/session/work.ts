import { baselineAt, type FastballBaseline } from '../coaching/baseline.ts';
import { separationFrom } from '../coaching/separation.ts';
import { missOf } from '../coaching/target.ts';
import { STAGES } from '../facts/vocabulary.ts';
import { isFastball, sessionBaselines } from './fastballs.ts';
import type { SessionEntry, ThrowEntry, TrialEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';
import type { StageShare } from './planned.ts';

/** The name of a trial that holds over days: what was meant, how it was held, what was said. */
export function workOf({ intent, grip, cue }: TrialEntry): string {
  return JSON.stringify([intent, grip === null ? null : Object.entries(grip).sort(), cue?.words ?? null]);
}

/** The shares of a session, one for each trial and stage that has a judged throw. */
export function sharesOf(session: SessionEntry, entries: readonly ThrowEntry[]): StageShare[] {
  const { zone } = session;
  if (zone === null) return [];
  const shares = new Map<string, StageShare>();
  const baselines = new Map(STAGES.map((stage) => [stage, sessionBaselines(entries, session, stage)]));
  for (const entry of entries) {
    const tags = entry.tags[session.id];
    const trial = session.trials.find(({ letter }) => letter === tags?.trial);
    const hit = tags === undefined || tags.excluded !== null || isFastball(entry, session) ? null : onTarget(entry, session, baselines.get(tags.stage)!);
    if (tags === undefined || trial === undefined || hit === null) continue;
    const [stage, work] = [tags.stage, workOf(trial)];
    const known = shares.get(`${stage}/${work}`) ?? { stage, work, hits: 0, judged: 0 };
    shares.set(`${stage}/${work}`, { ...known, hits: known.hits + (hit ? 1 : 0), judged: known.judged + 1 });
  }
  return [...shares.values()];
}

function onTarget(entry: ThrowEntry, session: SessionEntry, baselines: readonly FastballBaseline[]): boolean | null {
  const baseline = baselineAt(baselines, entry.place) ?? session.earlier[entry.tags[session.id]!.stage] ?? null;
  const analysed = analysisOf(entry, session);
  if (baseline === null || analysed.problem !== null || session.zone === null) return null;
  const { verticalM, armSideM } = separationFrom(analysed, baseline);
  return typeof verticalM !== 'number' || typeof armSideM !== 'number' ? null : missOf({ verticalM, armSideM }, session.zone).onTarget;
}
