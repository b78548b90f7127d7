import type { SpeedBand, TargetZone } from '../../../core/facts/coach.ts';
import { kmhToMps, inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { movementIn, speedIn } from '../../words/numbers.ts';
import type { Units } from '../../words/speech.ts';
import { fieldText, typedNumber } from '../fields/typed-number.ts';

/** Zone and band as they stand in number fields: the viewer's units, below and slower positive, whole height and width. */
export interface ZoneDraft {
  readonly below: string;
  readonly armSide: string;
  readonly height: string;
  readonly width: string;
  readonly band: { readonly least: string; readonly most: string } | null;
}
export type ZonePart = 'below' | 'armSide' | 'height' | 'width' | 'least' | 'most';

/** What may be typed, in SI: the limits of the fact that it becomes. */
export const LIMITS_M = { below: [-1.5, 1.5], armSide: [-1.5, 1.5], height: [0.02, 2], width: [0.02, 2] } as const;
export const LIMITS_MPS = [-5, 25] as const;

/** A place to start from: below the fastball, slightly to arm side, ten miles an hour slower. House rule, no judgement about anybody. */
export const STARTING_ZONE: TargetZone = { kind: 'ellipse', verticalM: inchesToM(-8), armSideM: inchesToM(2), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(4) };
export const STARTING_BAND: SpeedBand = { lowMps: mphToMps(-12), highMps: mphToMps(-7) };

/** The text of a zone and band: movement to a tenth, speed to a tenth. */
export function draftOf(zone: TargetZone, band: SpeedBand | null, units: Units): ZoneDraft {
  const move = (metres: number) => fieldText(movementIn(units, metres), 1);
  const speed = (mps: number) => fieldText(speedIn(units, mps), 1);
  return {
    below: move(-zone.verticalM),
    armSide: move(zone.armSideM),
    height: move(zone.verticalRadiusM * 2),
    width: move(zone.armSideRadiusM * 2),
    band: band === null ? null : { least: speed(-band.highMps), most: speed(-band.lowMps) },
  };
}

/** The zone and band that a draft describes, or the first part of it that makes none. */
export function zoneFrom(draft: ZoneDraft, units: Units): { readonly zone: TargetZone; readonly band: SpeedBand | null } | { readonly wrong: ZonePart } {
  const metres = (text: string) => scaled(text, units === 'imperial' ? inchesToM : (cm) => cm / 100);
  const mps = (text: string) => scaled(text, units === 'imperial' ? mphToMps : kmhToMps);
  const below = within(metres(draft.below), LIMITS_M.below);
  if (below === null) return { wrong: 'below' };
  const armSide = within(metres(draft.armSide), LIMITS_M.armSide);
  if (armSide === null) return { wrong: 'armSide' };
  const height = within(metres(draft.height), LIMITS_M.height);
  if (height === null) return { wrong: 'height' };
  const width = within(metres(draft.width), LIMITS_M.width);
  if (width === null) return { wrong: 'width' };
  const zone: TargetZone = { kind: 'ellipse', verticalM: 0 - below, armSideM: armSide, verticalRadiusM: height / 2, armSideRadiusM: width / 2 };
  if (draft.band === null) return { zone, band: null };
  const least = within(mps(draft.band.least), LIMITS_MPS);
  if (least === null) return { wrong: 'least' };
  const most = within(mps(draft.band.most), LIMITS_MPS);
  if (most === null || most <= least) return { wrong: 'most' };
  return { zone, band: { lowMps: -most, highMps: -least } };
}

/** What a view rounds away, in metres and metres per second. */
const ROUNDED = 0.001;

/** Whether what the server shows is the target that was set, but for the rounding of views. */
export function sameTarget(set: { readonly zone: TargetZone; readonly band: SpeedBand | null }, shown: { readonly zone: TargetZone | null; readonly speedBand: SpeedBand | null }): boolean {
  const numbers = (zone: TargetZone, band: SpeedBand | null) => [zone.verticalM, zone.armSideM, zone.verticalRadiusM, zone.armSideRadiusM, ...(band === null ? [] : [band.lowMps, band.highMps])];
  if (shown.zone === null) return false;
  const here = numbers(set.zone, set.band);
  const there = numbers(shown.zone, shown.speedBand);
  return here.length === there.length && here.every((value, index) => Math.abs(value - there[index]!) <= ROUNDED);
}

function scaled(text: string, toSi: (value: number) => number): number | null {
  const value = typedNumber(text);
  return value === null ? null : toSi(value) + 0;
}

/** A hair of slack, so that a limit typed in the viewer's unit passes. */
function within(value: number | null, [low, high]: readonly [number, number]): number | null {
  return value !== null && value >= low - 1e-9 && value <= high + 1e-9 ? Math.min(high, Math.max(low, value)) : null;
}
