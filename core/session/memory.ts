import type { MoundAir } from '../facts/air-says.ts';
import { DEFAULT_DISTANCE_M } from '../facts/vocabulary.ts';
import { analyseThrow, type AnalysedThrow } from './analyse.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';

/**
 * The analysis of a throw is the costly step and depends on nothing but the throw and its circumstances, so it is
 * remembered with the body it came from. A corrected throw has another body; a moved one may have another hand.
 */
const remembered = new WeakMap<object, Map<string, AnalysedThrow>>();

/** What of a session its throws are read by. */
export type Owner = Pick<SessionEntry, 'id' | 'athlete'>;

/** A throw as its session sees it; `owner` is null for an unclaimed throw, which is read as from a mound. */
export function analysisOf(entry: ThrowEntry, owner: Owner | null): AnalysedThrow {
  const tags = owner === null ? undefined : entry.tags[owner.id];
  const circumstances = { hand: owner?.athlete.hand ?? null, stage: tags?.stage ?? 'mound', distanceM: tags?.distanceM ?? DEFAULT_DISTANCE_M.mound, air: entry.air } as const;
  const key = `${circumstances.hand}/${circumstances.stage}/${circumstances.distanceM}/${entry.source.sight}/${entry.source.axis}/${nameOf(entry.air)}`;
  const known = remembered.get(entry.body) ?? new Map<string, AnalysedThrow>();
  remembered.set(entry.body, known);
  const found = known.get(key) ?? analyseThrow(entry.body, entry.source, circumstances);
  known.set(key, found);
  return found;
}

const named = new WeakMap<MoundAir, string>();

/** The same air has the same name; written out once, since it is asked for at every throw of every view. */
function nameOf(air: MoundAir | null): string {
  if (air === null) return 'standard';
  const name = named.get(air) ?? JSON.stringify(air);
  named.set(air, name);
  return name;
}
