import { isFastball } from './fastballs.ts';
import { judged, type Judging } from './judged.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import type { StageComfort, WorkedStage } from './plans-known.ts';
import { wasQuiet } from './told.ts';
import { workOf } from './work.ts';

/** What was worked on in a session, one entry for each trial and stage with a throw that counts. */
export function workedIn(session: SessionEntry, entries: readonly ThrowEntry[], judging: Judging): WorkedStage[] {
  const worked = new Map<string, WorkedStage>();
  for (const entry of entries) {
    const tags = entry.tags[session.id];
    const trial = session.trials.find(({ letter }) => letter === tags?.trial);
    if (tags === undefined || trial === undefined || tags.excluded !== null || isFastball(entry, session)) continue;
    const key = `${tags.stage}/${workOf(trial)}`;
    const begun: WorkedStage = worked.get(key) ?? {
      stage: tags.stage, work: workOf(trial), trial, day: session.openedDay, firstAtMs: entry.atMs, lastAtMs: entry.atMs,
      throws: 0, hits: 0, judged: 0, quietThrows: 0,
    };
    const hit = judged(entry, judging).miss?.onTarget ?? null;
    worked.set(key, {
      ...begun,
      trial,
      lastAtMs: entry.atMs,
      throws: begun.throws + 1,
      hits: begun.hits + (hit === true ? 1 : 0),
      judged: begun.judged + (hit === null ? 0 : 1),
      quietThrows: begun.quietThrows + (wasQuiet(session.told, entry.place) ? 1 : 0),
    });
  }
  return [...worked.values()];
}

/** What the athlete has last said of each trial in each stage, after a session. */
export function comfortAfter(before: readonly StageComfort[], session: SessionEntry): StageComfort[] {
  const said = new Map(before.map((one) => [`${one.stage}/${one.work}`, one]));
  for (const { stage, trial, comfortable, atMs } of session.told.comfort) {
    const about = session.trials.find(({ letter }) => letter === trial);
    if (about !== undefined) said.set(`${stage}/${workOf(about)}`, { stage, work: workOf(about), comfortable, atMs });
  }
  return [...said.values()];
}
