import { feetToM, inchesToM, degToRad, kmhToMps, mphToMps } from '../units/convert.ts';
import type { DeviceErrors, DeviceUnits, ThrowBody } from './frames.ts';

type Triple = readonly [number, number, number];

/** A throw as measured, in SI and radians, in the frame of the plate; nothing mirrored. */
export type MeasuredFlight =
  | { readonly kind: 'path'; readonly samples: readonly { readonly timeS: number; readonly positionM: Triple }[] }
  | { readonly kind: 'constant'; readonly positionM: Triple; readonly velocityMps: Triple; readonly accelerationMps2: Triple }
  | {
      readonly kind: 'summary';
      readonly releaseSpeedMps: number;
      readonly plateSpeedMps: number | null;
      readonly verticalM: number | null;
      readonly rightM: number | null;
      readonly flightTimeS: number | null;
      readonly releaseM: Triple | null;
      readonly plate: { readonly rightM: number; readonly heightM: number } | null;
    };

export interface MeasuredThrow {
  readonly flight: MeasuredFlight;
  readonly spin: {
    readonly rateRpm: number;
    readonly axis: Triple | null;
    readonly tiltRad: number | null;
    readonly efficiency: number | null;
  } | null;
  readonly extensionM: number | null;
}

const DISTANCE = { m: (value: number) => value, ft: feetToM } as const;
const SPEED = { 'm/s': (value: number) => value, 'km/h': kmhToMps, mph: mphToMps, 'ft/s': feetToM } as const;
const MOVEMENT = { m: (value: number) => value, cm: (value: number) => value / 100, in: inchesToM } as const;

/** Turns a checked body into SI by the units that its device declared. */
export function toSi(body: ThrowBody, units: DeviceUnits): MeasuredThrow {
  const distance = DISTANCE[units.distance];
  const { spin } = body;
  return {
    flight: flightToSi(body, units),
    spin: spin === undefined ? null : {
      rateRpm: spin.rate,
      axis: spin.axis ?? null,
      tiltRad: spin.tilt === undefined ? null : degToRad(spin.tilt),
      efficiency: spin.efficiency ?? null,
    },
    extensionM: body.extension === undefined ? null : distance(body.extension),
  };
}

/** What a device says of the body that threw, besides where it let go; null where it does not. */
export function bodyToSi({ armSpeed, deliveryDuration }: ThrowBody, units: DeviceUnits): { readonly armSpeedMps: number | null; readonly deliveryDurationS: number | null } {
  return {
    armSpeedMps: armSpeed === undefined ? null : SPEED[units.speed](armSpeed),
    deliveryDurationS: deliveryDuration ?? null,
  };
}

/** What a device says of its errors beside those of a sample; null where it does not. */
export function errorsToSi({ movement, spinRate, tilt, axisBias }: DeviceErrors, units: DeviceUnits): { readonly movementM: number | null; readonly spinRateRpm: number | null; readonly tiltRad: number | null; readonly axisBiasRad: number | null } {
  return {
    movementM: movement === undefined ? null : MOVEMENT[units.movement](movement),
    spinRateRpm: spinRate ?? null,
    tiltRad: tilt === undefined ? null : degToRad(tilt),
    axisBiasRad: axisBias === undefined ? null : degToRad(axisBias),
  };
}

function flightToSi(body: ThrowBody, units: DeviceUnits): MeasuredFlight {
  const distance = DISTANCE[units.distance];
  const vector = ([x, y, z]: Triple): Triple => [distance(x), distance(y), distance(z)];
  if (body.path !== undefined) {
    return { kind: 'path', samples: body.path.map(([timeS, x, y, z]) => ({ timeS, positionM: vector([x, y, z]) })) };
  }
  if (body.constant !== undefined) {
    const { start, velocity, acceleration } = body.constant;
    return { kind: 'constant', positionM: vector(start), velocityMps: vector(velocity), accelerationMps2: vector(acceleration) };
  }
  return summaryToSi(body.summary!, units);
}

function summaryToSi(summary: NonNullable<ThrowBody['summary']>, units: DeviceUnits): MeasuredFlight {
  const distance = DISTANCE[units.distance];
  const speed = SPEED[units.speed];
  const movement = MOVEMENT[units.movement];
  const optional = <T, R>(value: T | undefined, convert: (value: T) => R): R | null => (value === undefined ? null : convert(value));
  return {
    kind: 'summary',
    releaseSpeedMps: speed(summary.releaseSpeed),
    plateSpeedMps: optional(summary.plateSpeed, speed),
    verticalM: optional(summary.verticalBreak, movement),
    rightM: optional(summary.horizontalBreak, movement),
    flightTimeS: summary.flightTime ?? null,
    releaseM: optional(summary.release, ([x, y, z]) => [distance(x), distance(y), distance(z)] as const),
    plate: optional(summary.plate, ({ x, z }) => ({ rightM: distance(x), heightM: distance(z) })),
  };
}
