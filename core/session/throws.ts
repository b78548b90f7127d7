import type { Miss } from '../coaching/target.ts';
import type { Decision } from '../facts/decision-says.ts';
import type { MissView, SeparationView, ThrowView } from '../facts/views.ts';
import type { Stage } from '../facts/vocabulary.ts';
import type { AnalysedThrow } from './analyse.ts';
import { isFastball } from './fastballs.ts';
import { gapOf } from './gap.ts';
import { judged, type Judging } from './judged.ts';
import type { Tags, ThrowEntry, Thrown } from './ledger.ts';
import { analysisOf } from './memory.ts';
import { rounded } from './quanta.ts';
import { speedBandIn, zoneIn } from './targets.ts';
import { newestOf } from './thrown.ts';

interface Shown {
  readonly run: readonly ThrowEntry[];
  /** Of its first throw. */
  readonly number: number;
  readonly judging: Judging | null;
  readonly decision: Decision | null;
  /** Of each throw, rounded. */
  readonly views: readonly ThrowView[];
}
/** By the first throw of a run: rounding a throw is most of the cost of a view, and looking each of two hundred up is much of the rest. */
const remembered = new WeakMap<ThrowEntry, Shown>();

/** The newest throws of a session as a screen gets them, rounded, oldest first. */
export function throwViews(thrown: Thrown, most: number, judging: Judging, decision: Decision): ThrowView[] {
  return newestOf(thrown, most, (run, first) => viewsOfRun(run, first, judging, decision, (entry, number) => throwUnrounded(entry, number, judging, decision)));
}

/** The newest of those that belong to nobody yet. */
export function unclaimedViews(unclaimed: Thrown, most: number): ThrowView[] {
  return newestOf(unclaimed, most, (run, first) => viewsOfRun(run, first, null, null, (entry, number) => named(entry, number, SAID_BY_NOBODY, analysisOf(entry, null), HELD_AGAINST_NOTHING)));
}

type Making = (entry: ThrowEntry, number: number) => ThrowView;

/** What is the same throw, shown the same way, is the same object as before. */
function viewsOfRun(run: readonly ThrowEntry[], number: number, judging: Judging | null, decision: Decision | null, make: Making): readonly ThrowView[] {
  const before = remembered.get(run[0]!);
  const known = before !== undefined && before.number === number && before.judging === judging && before.decision === decision ? before : null;
  if (known?.run === run) return known.views;
  const views = run.map((entry, index) => (known !== null && known.run[index] === entry ? known.views[index]! : rounded(make(entry, number + index))));
  remembered.set(run[0]!, { run, number, judging, decision, views });
  return views;
}

/** A throw of a session to the last bit, as the formulas gave it: for who computes on with it. */
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

const SAID_BY_NOBODY = { stage: 'mound', intent: null, taggedLater: false, trial: null, excluded: null } as const;
const HELD_AGAINST_NOTHING: Held = { fastball: false, separation: null, miss: null, gap: null };

/** Where there is a miss there are a separation and a zone. */
function missView(miss: Miss, { speedMps }: SeparationView, judging: Judging, stage: Stage): MissView {
  const band = speedBandIn(judging, stage);
  const paceOnTarget = band === null || typeof speedMps !== 'number' ? null : speedMps >= band.lowMps && speedMps <= band.highMps;
  return { ...miss, zoneVerticalM: zoneIn(judging, stage)!.verticalM, paceOnTarget };
}
