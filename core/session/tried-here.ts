import { baselineAt } from '../coaching/baseline.ts';
import { separationFrom } from '../coaching/separation.ts';
import { missOf } from '../coaching/target.ts';
import { triedFamilies } from '../coaching/tried-families.ts';
import type { TargetZone } from '../facts/coach.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import { isFastball, sessionBaselines } from './fastballs.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';
import type { StageTried } from './brought.ts';
import { zoneIn } from './targets.ts';

/** What a session has shown of each family that it tried, stage by stage. */
export function triedHere(session: SessionEntry, entries: readonly ThrowEntry[]): StageTried[] {
  return STAGES.flatMap((stage) => {
    const own = entries.filter((entry) => entry.tags[session.id]?.stage === stage && entry.tags[session.id]?.trial !== null && !isFastball(entry, session));
    if (own.length === 0) return [];
    return triedFamilies(session.trials, thrownIn(own, entries, session, stage), comfortIn(session, stage)).map((tried) => ({ stage, tried }));
  });
}

type Thrown = Parameters<typeof triedFamilies>[1];

function thrownIn(own: readonly ThrowEntry[], entries: readonly ThrowEntry[], session: SessionEntry, stage: Stage): Thrown {
  const baselines = sessionBaselines(entries, session, stage);
  return own.map((entry) => {
    const { trial, excluded } = entry.tags[session.id]!;
    const analysed = analysisOf(entry, session);
    const baseline = baselineAt(baselines, entry.place) ?? session.earlier[stage] ?? null;
    const separation = baseline === null ? null : separationFrom(analysed, baseline);
    return { trial, excluded, problem: analysed.problem, separation, miss: missAt(separation, zoneIn(session, stage)) };
  });
}

function missAt(separation: Thrown[number]['separation'], zone: TargetZone | null): Thrown[number]['miss'] {
  if (separation === null || zone === null) return null;
  const { verticalM, armSideM } = separation;
  return typeof verticalM !== 'number' || typeof armSideM !== 'number' ? null : missOf({ verticalM, armSideM }, zone);
}

function comfortIn({ told }: SessionEntry, stage: Stage): { readonly trial: string; readonly comfortable: boolean } | null {
  const last = told.comfort.findLast((said) => said.stage === stage && said.trial !== null);
  return last === undefined ? null : { trial: last.trial!, comfortable: last.comfortable };
}
