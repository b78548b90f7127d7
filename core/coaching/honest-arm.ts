import type { BodyEvidence, BodyMeasure, HonestArm } from '../facts/advice-view.ts';
import { anytimeRadiusOf } from '../statistics/anytime-difference.ts';
import { blockedDifference } from '../statistics/blocked-difference.ts';
import { NO_VALUES, tallyWith, type Tally } from '../statistics/tally.ts';
import { inchesToM, mphToMps } from '../units/convert.ts';

/** What tells about the body's speed, of one throw; null where the device does not give it. Arm side positive. */
export type BodyReadings = Readonly<Record<BodyMeasure, number | null>>;

/** What is kept of the readings of many throws. */
export type BodyTallies = Readonly<Record<BodyMeasure, Tally>>;
export const NO_BODIES: BodyTallies = { deliveryDurationS: NO_VALUES, armSpeedMps: NO_VALUES, releaseHeightM: NO_VALUES, releaseArmSideM: NO_VALUES, extensionM: NO_VALUES };

/** One throw more. */
export function withBody(tallies: BodyTallies, thrown: BodyReadings): BodyTallies {
  const more = (measure: BodyMeasure): Tally => (thrown[measure] === null ? tallies[measure] : tallyWith(tallies[measure], thrown[measure]));
  return {
    deliveryDurationS: more('deliveryDurationS'), armSpeedMps: more('armSpeedMps'),
    releaseHeightM: more('releaseHeightM'), releaseArmSideM: more('releaseArmSideM'), extensionM: more('extensionM'),
  };
}

/** The speeds of the first fastballs, and of those after them. */
export interface FastballSpeeds {
  readonly first: Tally;
  readonly since: Tally;
}
export const NO_FASTBALL_SPEEDS: FastballSpeeds = { first: NO_VALUES, since: NO_VALUES };

/** The next fastball. */
export function withFastballSpeed({ first, since }: FastballSpeeds, speedMps: number): FastballSpeeds {
  return first.count < FEWEST ? { first: tallyWith(first, speedMps), since } : { first, since: tallyWith(since, speedMps) };
}

export interface HonestArmInput {
  readonly changeups: BodyTallies;
  readonly fastballs: BodyTallies;
  readonly fastballSpeeds: FastballSpeeds;
}

interface Rule {
  readonly measure: BodyMeasure;
  readonly smallest: number;
  /** Sign of a difference that means a slower body; 0 where neither does. */
  readonly slower: 1 | -1 | 0;
}
/** House rules: a delivery of 0.05 s more, an arm 2 mph slower, a release 2 in elsewhere. */
const DIRECT: readonly Rule[] = [
  { measure: 'deliveryDurationS', smallest: 0.05, slower: 1 },
  { measure: 'armSpeedMps', smallest: mphToMps(2), slower: -1 },
];
const RELEASE: readonly Rule[] = [
  { measure: 'releaseHeightM', smallest: inchesToM(2), slower: 0 },
  { measure: 'releaseArmSideM', smallest: inchesToM(2), slower: 0 },
  { measure: 'extensionM', smallest: inchesToM(2), slower: -1 },
];
const SMALLEST_SPEED_MPS = mphToMps(1);
const FEWEST = 5;
const ALPHA = 0.05;

/**
 * Whether the body slows down for the changeup. A timed delivery or arm decides where there is one; otherwise the release
 * against the fastball's, and the fastball's own speed, because a changeup held against a lazy fastball looks honest.
 * The chance of a false word is shared among the measures looked at. One that slows is `slowing`; `honest-arm` needs
 * every measure of the release to be the same, height and side at least. That the fastball kept its speed takes more
 * fastballs to show than a session has, so there `honest-arm` only needs that it does not look slower by what matters.
 */
export function honestArm(input: HonestArmInput): HonestArm {
  const direct = evidenceOf(DIRECT, input, DIRECT.length);
  const sharedBy = RELEASE.length + 1;
  const release = [...evidenceOf(RELEASE, input, sharedBy), ...fastballsOwn(input.fastballSpeeds, ALPHA / sharedBy)];
  const evidence = [...direct, ...release];
  if (direct.length > 0) return { kind: said(direct), basis: 'direct', evidence };
  const shown = release.filter(({ measure, way, difference, smallest }) => measure !== 'fastballSpeedMps' || way !== 'cannot-tell' || difference < -smallest);
  const whole = release.some(({ measure }) => measure === 'releaseHeightM') && release.some(({ measure }) => measure === 'releaseArmSideM');
  const kind = said(shown);
  return { kind: kind === 'honest-arm' && !whole ? 'cannot-tell' : kind, basis: release.length === 0 ? 'none' : 'release', evidence };
}

function said(evidence: readonly BodyEvidence[]): HonestArm['kind'] {
  if (evidence.some(({ way }) => way === 'slowing')) return 'slowing';
  return evidence.length > 0 && evidence.every(({ way }) => way === 'same' || way === 'other-way') ? 'honest-arm' : 'cannot-tell';
}

function evidenceOf(rules: readonly Rule[], { changeups, fastballs }: HonestArmInput, sharedBy: number): BodyEvidence[] {
  return rules.flatMap((rule) => held(rule.measure, fastballs[rule.measure], changeups[rule.measure], rule, ALPHA / sharedBy));
}

/** The first five fastballs against those after them: a fastball that sinks takes the separation with it. */
function fastballsOwn({ first, since }: FastballSpeeds, alpha: number): BodyEvidence[] {
  return held('fastballSpeedMps', first, since, { smallest: SMALLEST_SPEED_MPS, slower: -1 }, alpha);
}

/** Nothing where one of the two sides never had the measure. */
function held(measure: BodyEvidence['measure'], a: Tally, b: Tally, rule: Pick<Rule, 'smallest' | 'slower'>, alpha: number): BodyEvidence[] {
  if (a.count === 0 || b.count === 0) return [];
  const difference = b.mean - a.mean;
  const radius = radiusOf(a, b, alpha);
  const interval = radius === null ? null : { low: difference - radius, high: difference + radius };
  return [{ measure, difference, interval, smallest: rule.smallest, way: wayOf(interval, rule) }];
}

/**
 * As wide as that of a verdict, more so where one of the two scatters far more: a changeup that is still being learned does. Null
 * where the throws are too few, and where readings only repeat, which come from a device that rounds: no interval has width 0.
 */
function radiusOf(a: Tally, b: Tally, alpha: number): number | null {
  if (a.count < FEWEST || b.count < FEWEST) return null;
  const found = blockedDifference([{ a, b }]);
  const radius = found === null ? Infinity : anytimeRadiusOf(found, found.design, alpha);
  return radius === Infinity ? null : radius;
}

function wayOf(interval: BodyEvidence['interval'], { smallest, slower }: Pick<Rule, 'smallest' | 'slower'>): BodyEvidence['way'] {
  if (interval === null) return 'cannot-tell';
  const { low, high } = interval;
  if (low >= -smallest && high <= smallest) return 'same';
  if (low <= smallest && high >= -smallest) return 'cannot-tell';
  if (slower === 0) return 'moved';
  return low > 0 === slower > 0 ? 'slowing' : 'other-way';
}
