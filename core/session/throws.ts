import type { Miss } from '../coaching/target.ts';
import type { MissView, SeparationView, ThrowView } from '../facts/views.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { isFastball } from './fastballs.ts';
import { gapOf } from './gap.ts';
import { judged, type StageBaselines } from './judged.ts';
import type { SessionEntry, ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';
import { speedBandIn, zoneIn } from './targets.ts';

/** A throw of a session as a screen gets it. */
export function throwView(entry: ThrowEntry, number: number, session: SessionEntry, baselines: StageBaselines): ThrowView {
  const { analysed: { path, ...shown }, baseline, separation, miss } = judged(entry, session, baselines);
  const tags = entry.tags[session.id]!;
  const fastball = isFastball(entry, session);
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
    bookmarked: tags.bookmarked ?? false,
    ...shown,
    separation,
    miss: miss === null ? null : missView(miss, separation!, session, tags.stage),
    gap: fastball || baseline === null || separation === null ? null : gapOf(path, baseline.path, session.decision),
  };
}

/** A throw that belongs to nobody yet. */
export function unclaimedView(entry: ThrowEntry, number: number): ThrowView {
  const { path: _, ...shown } = analysisOf(entry, null);
  return {
    place: entry.place, number, atMs: entry.atMs, stage: 'mound', intent: null, taggedLater: false, trial: null, fastball: false,
    excluded: null, corrected: entry.corrected, bookmarked: false, ...shown, separation: null, miss: null, gap: null,
  };
}

/** Where there is a miss there are a separation and a zone. */
function missView(miss: Miss, { speedMps }: SeparationView, session: SessionEntry, stage: Stage): MissView {
  const band = speedBandIn(session, stage);
  const paceOnTarget = band === null || typeof speedMps !== 'number' ? null : speedMps >= band.lowMps && speedMps <= band.highMps;
  return { ...miss, zoneVerticalM: zoneIn(session, stage)!.verticalM, paceOnTarget };
}
