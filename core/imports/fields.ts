/** What a column of a file can hold of a throw. */
export const FIELDS = [
  'releaseSpeed', 'plateSpeed', 'spinRate', 'tilt', 'efficiency', 'verticalBreak', 'horizontalBreak',
  'releaseHeight', 'releaseSide', 'releaseDistance', 'extension', 'flightTime', 'plateHeight', 'plateSide', 'armSpeed',
  'intent', 'trial', 'athlete', 'mound', 'session', 'moment', 'date', 'time', 'path', 'body',
] as const;
export type Field = (typeof FIELDS)[number];

/** Towards where a sideways number is positive, as the catcher sees it or by the hand that throws. */
export const SIDES = ['right', 'left', 'arm', 'glove'] as const;
export type Side = (typeof SIDES)[number];

/** In what form the values of a field are written. */
type Kind = 'number' | 'tilt' | 'text' | 'date' | 'time' | 'moment' | 'list' | 'object';

interface UnitRange {
  readonly unit: string;
  /** Where the values of a bullpen usually lie; null where every value may be in it. House rule, only for guessing. */
  readonly usual: readonly [low: number, high: number] | null;
}

export interface FieldForm {
  readonly kind: Kind;
  /** The likeliest first. */
  readonly units: readonly UnitRange[];
  /** The number is signed by a side. */
  readonly sided: boolean;
}

const any = (...units: string[]): UnitRange[] => units.map((unit) => ({ unit, usual: null }));
const number = (units: readonly UnitRange[], sided = false): FieldForm => ({ kind: 'number', units, sided });
const ranges = (given: Readonly<Record<string, readonly [number, number]>>): UnitRange[] => Object.entries(given).map(([unit, usual]) => ({ unit, usual }));

const SPEEDS = ranges({ mph: [55, 105], 'm/s': [24, 47], 'km/h': [88, 170], 'ft/s': [80, 155] });
const BREAKS = ranges({ m: [-0.8, 0.8], in: [-28, 28], cm: [-70, 70] });
const HEIGHTS = ranges({ ft: [3, 8], m: [0.9, 2.4], in: [36, 96], cm: [90, 240] });
const ASIDE = ranges({ m: [-1.4, 1.4], ft: [-4.5, 4.5], in: [-54, 54], cm: [-140, 140] });
const REACHES = ranges({ ft: [3, 8], m: [1, 2.5], in: [36, 96], cm: [100, 250] });
const FAR = ranges({ ft: [45, 60], m: [13.5, 18.4] });
const OVER_PLATE = ranges({ m: [-1, 2.2], ft: [-2, 7], in: [-24, 84], cm: [-60, 220] });

/** Units of a whole body in the form of the device protocol: of distance, speed and movement. */
export const BODY_UNITS = {
  'm, m/s, m': { distance: 'm', speed: 'm/s', movement: 'm' },
  'm, km/h, cm': { distance: 'm', speed: 'km/h', movement: 'cm' },
  'ft, mph, in': { distance: 'ft', speed: 'mph', movement: 'in' },
} as const;

export const FORMS: Readonly<Record<Field, FieldForm>> = {
  releaseSpeed: number(SPEEDS),
  plateSpeed: number(ranges({ mph: [50, 98], 'm/s': [22, 44], 'km/h': [80, 158], 'ft/s': [73, 145] })),
  spinRate: number(ranges({ rpm: [400, 3800] })),
  tilt: { kind: 'tilt', units: any('clock', 'deg'), sided: false },
  efficiency: number(ranges({ share: [0, 1], percent: [0, 100] })),
  verticalBreak: number(BREAKS),
  horizontalBreak: number(BREAKS, true),
  releaseHeight: number(HEIGHTS),
  releaseSide: number(ASIDE, true),
  releaseDistance: number(FAR),
  extension: number(REACHES),
  flightTime: number(ranges({ s: [0.3, 0.9], ms: [300, 900] })),
  plateHeight: number(OVER_PLATE),
  plateSide: number(OVER_PLATE, true),
  armSpeed: number(ranges({ 'm/s': [10, 45], mph: [45, 100], 'km/h': [70, 160], 'ft/s': [60, 150] })),
  intent: { kind: 'text', units: [], sided: false },
  trial: { kind: 'text', units: [], sided: false },
  athlete: { kind: 'text', units: [], sided: false },
  mound: { kind: 'text', units: [], sided: false },
  session: { kind: 'text', units: [], sided: false },
  moment: { kind: 'moment', units: any('year-first', 'month-first', 'day-first', 'ms', 's'), sided: false },
  date: { kind: 'date', units: any('year-first', 'month-first', 'day-first'), sided: false },
  time: { kind: 'time', units: [], sided: false },
  path: { kind: 'list', units: any('m', 'ft'), sided: false },
  body: { kind: 'object', units: any(...Object.keys(BODY_UNITS)), sided: false },
};
