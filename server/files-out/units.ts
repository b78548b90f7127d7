import { mpsToKmh, mpsToMph, mToFeet, mToInches, radToDeg } from '../../core/units/convert.ts';

/** `imperial` and `metric` are the units of the screens, `si` what core computes in. */
export const UNIT_SYSTEMS = ['imperial', 'metric', 'si'] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

/** What a column measures: it says which unit it gets. */
export type Quantity = 'speed' | 'movement' | 'length' | 'angle' | 'time';

interface Unit {
  /** As it stands at the end of a column's name. */
  readonly name: string;
  readonly fromSi: (value: number) => number;
}

const asItIs = (value: number): number => value;
const DEGREES: Unit = { name: 'deg', fromSi: radToDeg };
const MILLISECONDS: Unit = { name: 'ms', fromSi: (seconds) => seconds * 1000 };
const METRES: Unit = { name: 'm', fromSi: asItIs };

/** The only place where a number of an export gets its unit. */
export const UNITS: Readonly<Record<UnitSystem, Readonly<Record<Quantity, Unit>>>> = {
  imperial: { speed: { name: 'mph', fromSi: mpsToMph }, movement: { name: 'in', fromSi: mToInches }, length: { name: 'ft', fromSi: mToFeet }, angle: DEGREES, time: MILLISECONDS },
  metric: { speed: { name: 'kmh', fromSi: mpsToKmh }, movement: { name: 'cm', fromSi: (metres) => metres * 100 }, length: METRES, angle: DEGREES, time: MILLISECONDS },
  si: { speed: { name: 'mps', fromSi: asItIs }, movement: METRES, length: METRES, angle: { name: 'rad', fromSi: asItIs }, time: { name: 's', fromSi: asItIs } },
};
