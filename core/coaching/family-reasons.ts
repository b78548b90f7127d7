import type { TriedFamily } from '../facts/advice-view.ts';
import type { Family, Intent, Observation, Sight } from '../facts/vocabulary.ts';
import { inchesToM } from '../units/convert.ts';
import { EFFICIENCY_HIGH, EFFICIENCY_LOW, favoursNeither, type FastballEfficiency } from './fastball-efficiency.ts';
import { observedWeight, type ObservedFamily } from './observed.ts';
import { ramp, rampOver } from './ramp.ts';

export interface FamilyInput {
  readonly efficiency: FastballEfficiency;
  /** Movement of the fastball baseline; null before there is one. */
  readonly fastball: { readonly verticalM: number; readonly armSideM: number } | null;
  readonly mainFastball: Intent;
  readonly sight: Sight;
  /** The verdict on movement that spin does not explain, over the athlete's seam-effect trials; null before one. */
  readonly seamEffect: 'seen' | 'not-seen' | 'cannot-tell' | 'too-few' | null;
  readonly tried: readonly TriedFamily[];
  /** What the coach has seen today. */
  readonly observed: readonly ObservedFamily[];
}

/** Why a family fits more or less. `weight` is what it adds in log-odds: above 0 it speaks for the family. */
export interface FamilyReason {
  readonly code:
    | 'efficiency-favours' | 'efficiency-speaks-against' | 'efficiency-between' | 'straddles-95' | 'straddles-80' | 'efficiency-unknown'
    | 'little-vertical-room' | 'room-for-split' | 'scatters-most' | 'first-try-needs-no-clever-grip'
    | 'seam-effect-seen' | 'seam-effect-not-seen' | 'device-cannot-see-it'
    | `seen-${Observation}`
    | 'tried-near-target' | 'tried-off-target' | 'tried-too-few' | 'slower-copy' | 'not-comfortable' | 'comfortable';
  readonly weight: number;
  /** What the reason rests on, in SI, by name. */
  readonly numbers: Readonly<Record<string, number>>;
}

/**
 * All weights are house rules; what they lean on is trade knowledge and what was tried. What the fastball suggests counts
 * like ten throws: it fades as the family's own throws come in.
 */
const WORTH_THROWS = 10;
const MOST_BY_EFFICIENCY = 1.5;
const MOST_BY_MISS = 3;
const FEWEST_TRIED = 5;
/** Little room from here down, plenty from there up: induced vertical break of the fastball. */
const LITTLE_ROOM_M = inchesToM(6);
const PLENTY_OF_ROOM_M = inchesToM(12);
/** Nearer to the fastball than this a changeup is a slower copy of it. */
const COPY_WITHIN_M = inchesToM(3);

const reason = (code: FamilyReason['code'], weight: number, numbers: FamilyReason['numbers'] = {}): FamilyReason => ({ code, weight, numbers });

/** Everything that speaks for or against one family. */
export function familyReasons(family: Family, input: FamilyInput): FamilyReason[] {
  const tried = input.tried.find((one) => one.family === family);
  const fades = WORTH_THROWS / (WORTH_THROWS + (tried?.throws ?? 0));
  return [
    ...byEfficiency(family, input.efficiency, fades),
    ...byRoom(family, input, fades),
    ...bySeamEffect(family, input),
    ...(family === 'split' ? [reason('scatters-most', -0.4 * fades)] : []),
    ...input.observed.filter((one) => one.family === family).map((one) => reason(`seen-${one.what}`, observedWeight(one))),
    ...(tried === undefined || tried.throws === 0 ? [reason('first-try-needs-no-clever-grip', 0)] : byTrials(family, tried)),
  ];
}

function byEfficiency(family: Family, efficiency: FastballEfficiency, fades: number): FamilyReason[] {
  if (efficiency.kind === 'unknown') return [reason('efficiency-unknown', 0, { count: efficiency.count })];
  const { mean, low, high } = efficiency;
  const numbers = { mean, low, high };
  const straddles = [
    ...(low < EFFICIENCY_HIGH && high > EFFICIENCY_HIGH ? [reason('straddles-95', 0, numbers)] : []),
    ...(low < EFFICIENCY_LOW && high > EFFICIENCY_LOW ? [reason('straddles-80', 0, numbers)] : []),
  ];
  if (family === 'split') return straddles;
  const towardsTurnover = 2 * rampOver(low, high, EFFICIENCY_LOW, EFFICIENCY_HIGH) - 1;
  const weight = MOST_BY_EFFICIENCY * fades * (family === 'turnover' ? towardsTurnover : -towardsTurnover);
  return [reason(favoursNeither(mean) ? 'efficiency-between' : weight > 0 ? 'efficiency-favours' : 'efficiency-speaks-against', weight, numbers), ...straddles];
}

/** A sinker leaves little vertical room: what is left is the speed gap, command, or a split. */
function byRoom(family: Family, { fastball, mainFastball }: FamilyInput, fades: number): FamilyReason[] {
  const flat = fastball === null ? 0 : ramp(fastball.verticalM, PLENTY_OF_ROOM_M, LITTLE_ROOM_M);
  const lacking = mainFastball === 'sinker' ? 1 : flat;
  if (lacking === 0) return [];
  const numbers: Readonly<Record<string, number>> = fastball === null ? {} : { verticalM: fastball.verticalM };
  return family === 'split' ? [reason('room-for-split', 0.8 * lacking * fades, numbers)] : [reason('little-vertical-room', -0.6 * lacking * fades, numbers)];
}

function bySeamEffect(family: Family, { seamEffect, sight }: FamilyInput): FamilyReason[] {
  if (family !== 'seam-effect') return [];
  if (sight === 'spin-only') return [reason('device-cannot-see-it', 0)];
  if (seamEffect === 'seen') return [reason('seam-effect-seen', 1)];
  return seamEffect === 'not-seen' ? [reason('seam-effect-not-seen', -1)] : [];
}

/** A handful proves nothing, of a split least of all: it takes twice the throws to weigh as much. */
function byTrials(family: Family, { throws, meanMiss, separation, comfortable }: TriedFamily): FamilyReason[] {
  const comfort = comfortable === null ? [] : [comfortable ? reason('comfortable', 0.2) : reason('not-comfortable', -0.8)];
  if (throws < FEWEST_TRIED) return [reason('tried-too-few', 0, { throws, need: FEWEST_TRIED }), ...comfort];
  const counts = throws / (throws + WORTH_THROWS * (family === 'split' ? 2 : 1));
  const copy = separation !== null && family === 'seam-effect' && Math.hypot(separation.verticalM, separation.armSideM) < COPY_WITHIN_M;
  return [
    ...(meanMiss === null ? [] : [reason(meanMiss <= 1 ? 'tried-near-target' : 'tried-off-target', -MOST_BY_MISS * Math.tanh((meanMiss - 1) / 2) * counts, { throws, meanMiss })]),
    ...(copy ? [reason('slower-copy', -0.8 * counts, { verticalM: separation.verticalM, armSideM: separation.armSideM })] : []),
    ...comfort,
  ];
}
