import type { Cue, Grip } from '../../core/facts/coach.ts';
import type { ThrowView, WindowView } from '../../core/facts/views.ts';
import { STAGES, type Intent, type Stage } from '../../core/facts/vocabulary.ts';
import { zoneIn } from '../../core/session/targets.ts';
import { windowsOver } from '../../core/session/windows.ts';
import { workOf } from '../../core/session/work.ts';
import type { FoldedSession } from './record.ts';

/** One trial in one stage of one session. */
export interface TrialRow {
  readonly key: string;
  readonly session: string;
  readonly letter: string;
  readonly stage: Stage;
  readonly intent: Intent;
  readonly grip: Grip | null;
  readonly cue: Cue | null;
  /** What makes it the same trial on another day. */
  readonly work: string;
  /** Of its first throw. */
  readonly atMs: number;
  readonly timeZone: string;
  /** Excluded ones too. */
  readonly throws: readonly ThrowView[];
  readonly excluded: number;
  /** Over all of its throws, excluded ones left out. */
  readonly all: WindowView;
}

/** Names a trial in one stage of one session, in an address too. */
export function rowKey(session: string, letter: string, stage: Stage): string {
  return `${session}.${letter}.${stage}`;
}

/** The trials of a session that were thrown, newest first; a trial thrown in two stages stands twice. */
export function rowsOf({ entry, view }: FoldedSession): readonly TrialRow[] {
  const rows = entry.trials.flatMap((trial) => STAGES.flatMap((stage): TrialRow[] => {
    const throws = view.throws.filter((thrown) => thrown.trial === trial.letter && thrown.stage === stage && !thrown.fastball);
    const first = throws[0];
    if (first === undefined) return [];
    const { letter, intent, grip, cue } = trial;
    return [{
      key: rowKey(entry.id, letter, stage), session: entry.id, letter, stage, intent, grip, cue, work: workOf(trial),
      atMs: first.atMs, timeZone: entry.timeZone, throws,
      excluded: throws.filter(({ excluded }) => excluded !== null).length,
      all: allOver(throws, zoneIn(entry, stage) !== null),
    }];
  }));
  return rows.toSorted((a, b) => b.atMs - a.atMs);
}

function allOver(throws: readonly ThrowView[], hasZone: boolean): WindowView {
  const kept = throws.flatMap(({ separation, miss, excluded }) => (separation === null || excluded !== null ? [] : [{ separation, miss }]));
  return windowsOver(kept, hasZone).at(-1)!;
}
