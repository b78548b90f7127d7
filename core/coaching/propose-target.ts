import type { SpeedBand, TargetZone } from '../facts/coach.ts';
import type { Family, Intent } from '../facts/vocabulary.ts';
import type { Separation } from '../flight/arm.ts';
import type { ReachRegion } from '../flight/reach.ts';
import { inchesToM } from '../units/convert.ts';
import { beyondReach, roomNear } from './reach-room.ts';

export interface TargetInput {
  readonly family: Family;
  readonly mainFastball: Intent;
  /** Of the baseline. */
  readonly fastball: { readonly verticalM: number; readonly armSideM: number; readonly speedMps: number };
  /** What spin alone can reach, as separation; null where it is not known. */
  readonly reach: ReachRegion | null;
}

export interface TargetReason {
  readonly code: 'usual-movement' | 'little-vertical-room' | 'drawn-into-reach' | 'smaller-to-fit-reach' | 'no-room-within-reach' | 'leaves-to-seam-effect' | 'leaves-to-split' | 'reach-unknown' | 'gap-carries-it';
  /** What the reason rests on, in SI, by name. */
  readonly numbers: Readonly<Record<string, number>>;
}

export interface ProposedTarget {
  readonly zone: TargetZone;
  readonly speedBand: SpeedBand;
  /** From the nearest place that spin alone reaches to the middle of the zone. */
  readonly remainder: Separation;
  readonly reasons: readonly TargetReason[];
}

interface Usual {
  /** Movement of the changeup itself, from memory; the separation follows from the athlete's own fastball. */
  readonly verticalM: number;
  readonly armSideM: number;
  /** Slower by these shares of the fastball: about 10 mph of 90 for a turnover is common practice, the rest from memory. */
  readonly slower: readonly [least: number, most: number];
  readonly radiusM: number;
}
const USUAL: Readonly<Record<Family, Usual>> = {
  turnover: { verticalM: inchesToM(6), armSideM: inchesToM(14), slower: [0.09, 0.13], radiusM: inchesToM(3) },
  'seam-effect': { verticalM: inchesToM(4), armSideM: inchesToM(13), slower: [0.07, 0.12], radiusM: inchesToM(3) },
  split: { verticalM: inchesToM(3), armSideM: inchesToM(9), slower: [0.055, 0.11], radiusM: inchesToM(4) },
};
/** Under this vertical separation a changeup needs its speed gap. House rule. */
const LITTLE_ROOM_M = inchesToM(6);
const LEAST_DROP_M = inchesToM(3);
/** A zone smaller than this could not be told from luck: one smallest difference that matters. */
const LEAST_RADIUS_M = inchesToM(2);

/**
 * A target to begin with, from the family, the athlete's fastball and what the arm can reach; the coach drags it from
 * there. A turnover must lie within the reach of spin, so it is drawn in and made smaller if need be; what a seam-effect
 * changeup or a split lacks is left to the seam or the grip, and said.
 */
export function proposeTarget(input: TargetInput): ProposedTarget {
  const { family, fastball, reach } = input;
  const reasons: TargetReason[] = [{ code: 'usual-movement', numbers: { verticalM: USUAL[family].verticalM, armSideM: USUAL[family].armSideM } }];
  const wanted = wantedSeparation(input, reasons);
  const zone = family === 'turnover' && reach !== null ? intoReach(wanted, USUAL[family].radiusM, reach, reasons) : circle(wanted, USUAL[family].radiusM);
  const remainder = remainderOf(family, zone, reach, reasons);
  return { zone, speedBand: bandOf(family, fastball.speedMps), remainder, reasons };
}

function wantedSeparation({ family, fastball, mainFastball }: TargetInput, reasons: TargetReason[]): Separation {
  const usual = USUAL[family];
  const drop = usual.verticalM - fastball.verticalM;
  if (mainFastball === 'sinker' || drop > -LITTLE_ROOM_M) {
    reasons.push({ code: 'little-vertical-room', numbers: { verticalM: drop } }, { code: 'gap-carries-it', numbers: {} });
  }
  return { verticalM: Math.min(drop, -LEAST_DROP_M), armSideM: Math.max(usual.armSideM - fastball.armSideM, 0) };
}

function intoReach(wanted: Separation, radiusM: number, reach: ReachRegion, reasons: TargetReason[]): TargetZone {
  for (let radius = radiusM; radius > LEAST_RADIUS_M - 1e-9; radius -= inchesToM(0.25)) {
    const place = roomNear(wanted, radius, reach);
    if (place === null) continue;
    const movedM = Math.hypot(place.verticalM - wanted.verticalM, place.armSideM - wanted.armSideM);
    if (movedM > 0) reasons.push({ code: 'drawn-into-reach', numbers: { movedM } });
    if (radius < radiusM) reasons.push({ code: 'smaller-to-fit-reach', numbers: { radiusM: radius } });
    return circle(place, radius);
  }
  reasons.push({ code: 'no-room-within-reach', numbers: { radiusM: LEAST_RADIUS_M } });
  return circle(wanted, LEAST_RADIUS_M);
}

function remainderOf(family: Family, zone: TargetZone, reach: ReachRegion | null, reasons: TargetReason[]): Separation {
  if (reach === null) {
    reasons.push({ code: 'reach-unknown', numbers: {} });
    return { verticalM: 0, armSideM: 0 };
  }
  const remainder = beyondReach(zone, reach);
  const left = Math.hypot(remainder.verticalM, remainder.armSideM) > 0;
  if (left && family !== 'turnover') reasons.push({ code: family === 'split' ? 'leaves-to-split' : 'leaves-to-seam-effect', numbers: { ...remainder } });
  return remainder;
}

function bandOf(family: Family, fastballMps: number): SpeedBand {
  const [least, most] = USUAL[family].slower;
  return { lowMps: -most * fastballMps, highMps: -least * fastballMps };
}

function circle({ verticalM, armSideM }: Separation, radiusM: number): TargetZone {
  return { kind: 'ellipse', verticalM, armSideM, verticalRadiusM: radiusM, armSideRadiusM: radiusM };
}
