import type { MeasuredThrow } from '../facts/si.ts';
import type { Missing, Reading, ThrowErrors, ThrowView } from '../facts/views.ts';
import { pathFromRelease } from '../flight/aim.ts';
import { horizontalApproachRad, verticalApproachRad } from '../flight/approach.ts';
import { flightTimeFromSpeedS } from '../flight/arrival.ts';
import { plate } from '../flight/ball.ts';
import { stateAtY, type ConstantAcceleration, type PathState } from '../flight/constant-acceleration.ts';
import type { FittedPath, PathErrors } from '../flight/fitted-path.ts';
import { inducedBreakBetween } from '../flight/movement.ts';
import { fitPath } from '../flight/path-fit.ts';
import { movementFromSpin } from '../flight/spin-flight.ts';
import { dot, norm, type Vector } from '../flight/vector.ts';
import { feetToM, rpmToRadps } from '../units/convert.ts';
import type { FlownAir } from './air-of.ts';
import type { Seer } from './seer.ts';

/** Where a device does not send the extension: 5.5 ft in front of the rubber, so 55 ft from the rear point of the plate on a full mound. */
export const ASSUMED_EXTENSION_M = feetToM(5.5);

type FlightReadings = Pick<
  ThrowView,
  | 'speedMps' | 'verticalM' | 'armSideM' | 'flightTimeS' | 'flightTimeFrom' | 'releaseHeightM' | 'releaseArmSideM'
  | 'plateHeightM' | 'plateRightM' | 'plateSpeedMps' | 'verticalApproachRad' | 'horizontalApproachRad' | 'standardErrors'
> & { readonly path: ConstantAcceleration | Missing };

type Flight<Kind extends MeasuredThrow['flight']['kind']> = Extract<MeasuredThrow['flight'], { kind: Kind }>;

/** The flight itself, in one of the two ways in which it is seen. */
export type Sighting =
  | { readonly kind: 'fit'; readonly fit: FittedPath; readonly releaseYM: number }
  | { readonly kind: 'constant'; readonly path: ConstantAcceleration; readonly releaseYM: number; readonly velocityMps: Vector };

export interface SeenFlight {
  /** Right of the catcher positive where it says arm side: turned once, at the end. */
  readonly readings: FlightReadings;
  /** Null for a summary and for what contradicts itself. */
  readonly sighting: Sighting | null;
  readonly problem: string | null;
}

/** What a measurement says of the flight, by whichever of the three shapes it came in. */
export function flightOf(measured: MeasuredThrow, distanceM: number, air: FlownAir, source: Seer): SeenFlight {
  const { flight, extensionM } = measured;
  const releaseYM = distanceM - (extensionM ?? ASSUMED_EXTENSION_M);
  switch (flight.kind) {
    case 'path': {
      const fit = fitPath(flight.samples, { fromYM: releaseYM, ...air, ...alongFlight(flight.samples, measured.spin) });
      if (fit.kind === 'problem') return unusable(fit.sentence);
      return { readings: readingsOf(fit.release, fit.arrival, errorsOf(fit.errors)), sighting: { kind: 'fit', fit, releaseYM }, problem: null };
    }
    case 'constant': {
      const path: ConstantAcceleration = flight;
      const release = stateAtY(path, releaseYM);
      const arrival = stateAtY(path, plate.frontYM);
      if (release === null || arrival === null || arrival.timeS <= release.timeS) return unusable('With this acceleration the ball does not fly from the release to the plate.');
      return { readings: readingsOf(release, arrival, null), sighting: { kind: 'constant', path, releaseYM, velocityMps: release.velocityMps }, problem: null };
    }
    case 'summary':
      return { readings: fromSummary(flight, measured.spin, releaseYM, air, source), sighting: null, problem: null };
  }
}

/** A measured axis says how much of the spin lies along the flight, which the way drag and lift fade depends on. */
function alongFlight(samples: Flight<'path'>['samples'], spin: MeasuredThrow['spin']): { readonly alongSpinRadps?: number } {
  if (spin === null || spin.axis === null) return {};
  const first = samples[0]!.positionM;
  const last = samples.at(-1)!.positionM;
  const way: Vector = [last[0] - first[0], last[1] - first[1], last[2] - first[2]];
  return { alongSpinRadps: (rpmToRadps(spin.rateRpm) * dot(spin.axis, way)) / (norm(spin.axis) * norm(way)) };
}

/** Of the readings that a path gives; the mirror leaves them as they are. */
function errorsOf({ releaseM, arrivalM, ...errors }: PathErrors): ThrowErrors {
  return {
    speedMps: errors.releaseSpeedMps,
    verticalM: errors.verticalM,
    armSideM: errors.horizontalM,
    flightTimeS: errors.flightTimeS,
    releaseHeightM: releaseM[2],
    releaseArmSideM: releaseM[0],
    plateHeightM: arrivalM[2],
    plateRightM: arrivalM[0],
    plateSpeedMps: errors.arrivalSpeedMps,
    verticalApproachRad: errors.verticalApproachRad,
    horizontalApproachRad: errors.horizontalApproachRad,
  };
}

function readingsOf(release: PathState, arrival: PathState, standardErrors: ThrowView['standardErrors']): FlightReadings {
  const moved = inducedBreakBetween(release, arrival);
  return {
    speedMps: norm(release.velocityMps),
    verticalM: moved.verticalM,
    armSideM: moved.horizontalM,
    flightTimeS: arrival.timeS - release.timeS,
    flightTimeFrom: 'path',
    releaseHeightM: release.positionM[2],
    releaseArmSideM: release.positionM[0],
    plateHeightM: arrival.positionM[2],
    plateRightM: arrival.positionM[0],
    plateSpeedMps: norm(arrival.velocityMps),
    verticalApproachRad: verticalApproachRad(arrival.velocityMps),
    horizontalApproachRad: horizontalApproachRad(arrival.velocityMps),
    path: pathFromRelease(release, arrival) ?? 'problem',
    standardErrors,
  };
}

function fromSummary(flight: Flight<'summary'>, spin: MeasuredThrow['spin'], releaseYM: number, { airDensityKgM3 }: FlownAir, source: Seer): FlightReadings {
  const distanceM = releaseYM - plate.frontYM;
  const flown = spin !== null && spin.tiltRad !== null && spin.efficiency !== null
    ? movementFromSpin({ releaseSpeedMps: flight.releaseSpeedMps, spinRpm: spin.rateRpm, tiltRad: spin.tiltRad, efficiency: spin.efficiency, distanceM, airDensityKgM3 })
    : null;
  const inferable = source.sight === 'spin-only' ? flown : null;
  const absent: Reading = source.sight === 'spin-only' && source.axis === 'none' ? 'not-visible' : 'not-sent';
  return {
    speedMps: flight.releaseSpeedMps,
    verticalM: flight.verticalM ?? inferable?.verticalM ?? absent,
    armSideM: flight.rightM ?? inferable?.horizontalM ?? absent,
    flightTimeS: flight.flightTimeS ?? flown?.timeS ?? flightTimeFromSpeedS(flight.releaseSpeedMps, distanceM, airDensityKgM3),
    flightTimeFrom: flight.flightTimeS !== null ? 'device' : flown !== null ? 'spin' : 'speed',
    releaseHeightM: flight.releaseM?.[2] ?? 'not-sent',
    releaseArmSideM: flight.releaseM?.[0] ?? 'not-sent',
    plateHeightM: flight.plate?.heightM ?? 'not-sent',
    plateRightM: flight.plate?.rightM ?? 'not-sent',
    plateSpeedMps: flight.plateSpeedMps ?? 'not-sent',
    verticalApproachRad: 'not-sent',
    horizontalApproachRad: 'not-sent',
    path: source.sight === 'spin-only' ? 'not-visible' : 'not-sent',
    standardErrors: null,
  };
}

function unusable(problem: string): SeenFlight {
  const readings: FlightReadings = {
    speedMps: 'problem', verticalM: 'problem', armSideM: 'problem', flightTimeS: 'problem', flightTimeFrom: null, releaseHeightM: 'problem', releaseArmSideM: 'problem',
    plateHeightM: 'problem', plateRightM: 'problem', plateSpeedMps: 'problem', verticalApproachRad: 'problem', horizontalApproachRad: 'problem', path: 'problem', standardErrors: null,
  };
  return { readings, sighting: null, problem };
}
