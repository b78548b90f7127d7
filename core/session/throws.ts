import type { Miss } from '../coaching/target.ts';
import type { Decision } from '../facts/decision-says.ts';
import type { MissView, SeparationView, ThrowView } from '../facts/views.ts';
import type { Stage } from '../facts/vocabulary.ts';
import type { AnalysedThrow } from './analyse.ts';
import { isFastball } from './fastballs.ts';
import { gapOf } from './gap.ts';
import { judged, type Judging } from './judged.ts';
import type { Tags, ThrowEntry } from './ledger.ts';
import { analysisOf } from './memory.ts';
import { rounded } from './quanta.ts';
import { speedBandIn, zoneIn } from './targets.ts';

interface Shown {
  readonly number: number;
  readonly judging: Judging | null;
  readonly decision: Decision | null;
  readonly view: ThrowView;
}
const remembered = new WeakMap<ThrowEntry, Shown>();

/** What was shown of a throw and would be shown again, null without: rounding it is most of the cost of a view. */
function shownBefore(entry: ThrowEntry, number: number, judging: Judging | null, decision: Decision | null): ThrowView | null {
  const known = remembered.get(entry);
  return known !== undefined && known.number === number && known.judging === judging && known.decision === decision ? known.view : null;
}

function shownNow(entry: ThrowEntry, shown: Shown): ThrowView {
  const view = rounded(shown.view);
  remembered.set(entry, { ...shown, view });
  return view;
}

/** A throw of a session as a screen gets it, rounded. */
export function throwView(entry: ThrowEntry, number: number, judging: Judging, decision: Decision): ThrowView {
  return shownBefore(entry, number, judging, decision) ?? shownNow(entry, { number, judging, decision, view: throwUnrounded(entry, number, judging, decision) });
}

/** The same to the last bit, as the formulas gave it: for who computes on with it. */
export function throwUnrounded(entry: ThrowEntry, number: number, judging: Judging, decision: Decision): ThrowView {
  const { analysed, baseline, separation, miss } = judged(entry, judging);
  const tags = entry.tags[judging.id]!;
  const fastball = isFastball(entry, judging);
  return named(entry, number, tags, analysed, {
    fastball,
    separation,
    miss: miss === null ? null : missView(miss, separation!, judging, tags.stage),
    gap: fastball || baseline === null || separation === null ? null : gapOf(analysed.path, baseline.path, decision),
  });
}

type Held = Pick<ThrowView, 'fastball' | 'separation' | 'miss' | 'gap'>;

/** Name by name: an object that others are spread into is slow to make, and slow to round and to write out ever after. */
function named(entry: ThrowEntry, number: number, tags: Omit<Tags, 'distanceM' | 'effort' | 'day'>, analysed: AnalysedThrow, { fastball, separation, miss, gap }: Held): ThrowView {
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
    inferred: analysed.inferred,
    problem: analysed.problem,
    speedMps: analysed.speedMps,
    verticalM: analysed.verticalM,
    armSideM: analysed.armSideM,
    flightTimeS: analysed.flightTimeS,
    flightTimeFrom: analysed.flightTimeFrom,
    releaseHeightM: analysed.releaseHeightM,
    releaseArmSideM: analysed.releaseArmSideM,
    extensionM: analysed.extensionM,
    plateHeightM: analysed.plateHeightM,
    plateRightM: analysed.plateRightM,
    plateSpeedMps: analysed.plateSpeedMps,
    verticalApproachRad: analysed.verticalApproachRad,
    horizontalApproachRad: analysed.horizontalApproachRad,
    spinRpm: analysed.spinRpm,
    tiltRad: analysed.tiltRad,
    efficiency: analysed.efficiency,
    gyroRad: analysed.gyroRad,
    spinFrom: analysed.spinFrom,
    seamAxis: analysed.seamAxis,
    unexplained: analysed.unexplained,
    standardErrors: analysed.standardErrors,
    separation,
    miss,
    gap,
  };
}

/** A throw that belongs to nobody yet, rounded. */
export function unclaimedView(entry: ThrowEntry, number: number): ThrowView {
  return shownBefore(entry, number, null, null) ?? shownNow(entry, { number, judging: null, decision: null, view: named(entry, number, SAID_BY_NOBODY, analysisOf(entry, null), HELD_AGAINST_NOTHING) });
}

const SAID_BY_NOBODY = { stage: 'mound', intent: null, taggedLater: false, trial: null, excluded: null } as const;
const HELD_AGAINST_NOTHING: Held = { fastball: false, separation: null, miss: null, gap: null };

/** Where there is a miss there are a separation and a zone. */
function missView(miss: Miss, { speedMps }: SeparationView, judging: Judging, stage: Stage): MissView {
  const band = speedBandIn(judging, stage);
  const paceOnTarget = band === null || typeof speedMps !== 'number' ? null : speedMps >= band.lowMps && speedMps <= band.highMps;
  return { ...miss, zoneVerticalM: zoneIn(judging, stage)!.verticalM, paceOnTarget };
}
