import type { Database } from 'libsql';
import type { Fact } from '../../core/facts/fact.ts';

interface Refused {
  readonly entry: number;
  readonly mound: string | null;
  readonly at_ms: number;
  readonly device: string | null;
  readonly run: string | null;
  readonly sequence: number | null;
}

/**
 * Takes the frames out of refusals that came while the athlete's sessions lasted, on their mounds or on none, or under the
 * number of one of the athlete's throws; tells how many. That something was refused, when and why, stays.
 * @param about the facts about the athlete
 */
export function clearFrames(database: Database, about: readonly Fact[]): number {
  const during = sessionTimes(about);
  const numbers = new Set(about.flatMap(({ said }) => (said.kind === 'throw-measured' || said.kind === 'throw-corrected' ? [numberOf(said.source)] : [])));
  const isTheirs = ({ mound, at_ms: atMs, device, run, sequence }: Refused): boolean =>
    numbers.has(numberOf({ device, run, sequence })) || during.some((one) => (mound === null || mound === one.mound) && atMs >= one.fromMs && atMs <= one.toMs);
  const theirs = (database.prepare('SELECT entry, mound, at_ms, device, run, sequence FROM refusals WHERE frame IS NOT NULL').all() as Refused[]).filter(isTheirs);
  const clear = database.prepare('UPDATE refusals SET frame = NULL WHERE entry = ?');
  for (const { entry } of theirs) clear.run(entry);
  return theirs.length;
}

/** From the first to the last fact of each session. */
function sessionTimes(about: readonly Fact[]): { readonly mound: string; readonly fromMs: number; readonly toMs: number }[] {
  return about.flatMap((opening) => {
    const { said } = opening;
    if (said.kind !== 'session-opened') return [];
    const closing = about.find((fact) => fact.mound === opening.mound && fact.said.kind === 'session-closed' && fact.said.session === said.session);
    return [{ mound: opening.mound, fromMs: opening.atMs, toMs: closing?.atMs ?? Infinity }];
  });
}

const numberOf = ({ device, run, sequence }: { readonly device: string | null; readonly run: string | null; readonly sequence: number | null }): string => `${device} ${run} ${sequence}`;
