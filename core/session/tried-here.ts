import { triedFamilies } from '../coaching/tried-families.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import type { StageTried } from './brought.ts';
import { isFastball } from './fastballs.ts';
import { judged, type Judging } from './judged.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';

/** What a session has shown of each family that it tried, stage by stage. */
export function triedHere(session: SessionEntry, entries: readonly ThrowEntry[], judging: Judging): StageTried[] {
  return STAGES.flatMap((stage) => {
    const own = entries.filter((entry) => entry.tags[session.id]?.stage === stage && entry.tags[session.id]?.trial !== null && !isFastball(entry, session));
    const thrown = own.map((entry) => {
      const { trial, excluded } = entry.tags[session.id]!;
      const { analysed: { problem }, separation, miss } = judged(entry, judging);
      return { trial, excluded, problem, separation, miss };
    });
    return triedFamilies(session.trials, thrown, comfortIn(session, stage)).map((tried) => ({ stage, tried }));
  });
}

function comfortIn({ told }: SessionEntry, stage: Stage): { readonly trial: string; readonly comfortable: boolean } | null {
  const last = told.comfort.findLast((said) => said.stage === stage && said.trial !== null);
  return last === undefined ? null : { trial: last.trial!, comfortable: last.comfortable };
}
