import type { DeviceUnits } from '../facts/frames.ts';
import { feetToM, inchesToM, kmhToMps, mphToMps } from '../units/convert.ts';
import type { Field } from './fields.ts';

const TO_SI: Readonly<Record<string, (value: number) => number>> = {
  mph: mphToMps, 'km/h': kmhToMps, 'ft/s': feetToM, 'm/s': (value) => value,
  in: inchesToM, ft: feetToM, cm: (value) => value / 100, m: (value) => value,
};

/** The same amount in another unit of the same kind; in its own unit it stays as it was written. */
export function inUnit(value: number, from: string, to: string): number {
  return from === to ? value : TO_SI[from]!(value) / TO_SI[to]!(1);
}

interface InUnit {
  readonly field: Field | null;
  readonly unit: string | null;
}

/** The units in which a throw out of these columns is kept: as the file has them, as far as a throw has one unit for each kind. */
export function unitsOf(columns: readonly InUnit[]): DeviceUnits {
  const unit = (...fields: Field[]): string | null => columns.find(({ field }) => field !== null && fields.includes(field))?.unit ?? null;
  const distance = unit('path', 'releaseHeight', 'releaseSide', 'releaseDistance', 'extension', 'plateHeight', 'plateSide');
  return {
    distance: distance === 'm' || distance === 'cm' ? 'm' : 'ft',
    speed: (unit('releaseSpeed', 'plateSpeed', 'armSpeed') ?? 'mph') as DeviceUnits['speed'],
    movement: (unit('verticalBreak', 'horizontalBreak') ?? 'in') as DeviceUnits['movement'],
  };
}
