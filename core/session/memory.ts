import type { Source } from '../facts/fact.ts';
import { DEFAULT_DISTANCE_M } from '../facts/vocabulary.ts';
import type { FastballReading } from '../coaching/baseline.ts';
import { analyseThrow, type AnalysedThrow, type Circumstances } from './analyse.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';

/** By what a throw is read besides its own numbers. */
interface KnownAnalysis extends Required<Circumstances> {
  readonly sight: Source['sight'];
  readonly axis: Source['axis'];
  readonly analysed: AnalysedThrow;
  /** What a baseline may rest on of it, once that was asked for. */
  fastball: FastballReading | null;
}

/**
 * The analysis of a throw is the costly step and depends on nothing but the throw and its circumstances, so it is
 * remembered with the body it came from. A corrected throw has another body; a moved one may have another hand.
 */
const remembered = new WeakMap<object, KnownAnalysis[]>();

/** What of a session its throws are read by. */
export type Owner = Pick<SessionEntry, 'id' | 'athlete'>;

/** A throw as its session sees it; `owner` is null for an unclaimed throw, which is read as from a mound. */
export function analysisOf(entry: ThrowEntry, owner: Owner | null): AnalysedThrow {
  return knownOf(entry, owner).analysed;
}

/** The same with what else is remembered of it. */
export function knownOf(entry: ThrowEntry, owner: Owner | null): KnownAnalysis {
  const tags = owner === null ? undefined : entry.tags[owner.id];
  const hand = owner?.athlete.hand ?? null;
  const stage = tags?.stage ?? 'mound';
  const distanceM = tags?.distanceM ?? DEFAULT_DISTANCE_M.mound;
  const { body, source, air } = entry;
  const { sight, axis } = source;
  const before = remembered.get(body);
  const known = before?.find((one) => one.hand === hand && one.stage === stage && one.distanceM === distanceM && one.sight === sight && one.axis === axis && one.air === air);
  if (known !== undefined) return known;
  const analysed = analyseThrow(body, source, { hand, stage, distanceM, air });
  const newest: KnownAnalysis = { hand, stage, distanceM, air, sight, axis, analysed, fastball: null };
  if (before === undefined) remembered.set(body, [newest]);
  else before.push(newest);
  return newest;
}
