import { baselineAt, type FastballBaseline } from '../coaching/baseline.ts';
import { separationFrom } from '../coaching/separation.ts';
import { missOf } from '../coaching/target.ts';
import type { SpeedBand, TargetZone } from '../facts/coach.ts';
import type { MissView, SeparationView, ThrowView } from '../facts/views.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { isFastball } from './fastballs.ts';
import { gapOf } from './gap.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';
import { speedBandIn, zoneIn } from './targets.ts';

/** A throw of a session, held against the baseline and the target of its own stage. */
export function throwView(entry: ThrowEntry, number: number, session: SessionEntry, baselines: (stage: Stage) => readonly FastballBaseline[]): ThrowView {
  const analysed = analysisOf(entry, session);
  const { path, ...shown } = analysed;
  const tags = entry.tags[session.id]!;
  const baseline = baselineAt(baselines(tags.stage), entry.place) ?? session.earlier[tags.stage] ?? null;
  const fastball = isFastball(entry, session);
  const separation = baseline === null || tags.excluded !== null || analysed.problem !== null ? null : separationFrom(analysed, baseline);
  return {
    place: entry.place,
    number,
    atMs: entry.atMs,
    stage: tags.stage,
    intent: tags.intent,
    taggedLater: tags.taggedLater,
    trial: tags.trial,
    fastball,
    excluded: tags.excluded,
    corrected: entry.corrected,
    ...shown,
    separation,
    miss: fastball ? null : judge(separation, zoneIn(session, tags.stage), speedBandIn(session, tags.stage)),
    gap: fastball || baseline === null || separation === null ? null : gapOf(path, baseline.path, session.decision),
  };
}

/** A throw that belongs to nobody yet. */
export function unclaimedView(entry: ThrowEntry, number: number): ThrowView {
  const { path: _, ...shown } = analysisOf(entry, null);
  return {
    place: entry.place, number, atMs: entry.atMs, stage: 'mound', intent: null, taggedLater: false, trial: null, fastball: false,
    excluded: null, corrected: entry.corrected, ...shown, separation: null, miss: null, gap: null,
  };
}

function judge(separation: SeparationView | null, zone: TargetZone | null, band: SpeedBand | null): MissView | null {
  if (separation === null || zone === null) return null;
  const { verticalM, armSideM, speedMps } = separation;
  if (typeof verticalM !== 'number' || typeof armSideM !== 'number') return null;
  const paceOnTarget = band === null || typeof speedMps !== 'number' ? null : speedMps >= band.lowMps && speedMps <= band.highMps;
  return { ...missOf({ verticalM, armSideM }, zone), zoneVerticalM: zone.verticalM, paceOnTarget };
}
