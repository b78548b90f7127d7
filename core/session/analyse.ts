import { STAGE_HAS_PLATE, type Hand, type Stage } from '../facts/vocabulary.ts';
import type { Source } from '../facts/fact.ts';
import type { ThrowBody } from '../facts/frames.ts';
import { toSi, type MeasuredThrow } from '../facts/si.ts';
import type { Missing, Reading, ThrowView } from '../facts/views.ts';
import { pathFromRelease } from '../flight/aim.ts';
import { standardAirDensityKgM3 } from '../flight/air.ts';
import { verticalApproachRad } from '../flight/approach.ts';
import { flightTimeFromSpeedS } from '../flight/arrival.ts';
import { plate } from '../flight/ball.ts';
import { stateAtY, type ConstantAcceleration, type PathState } from '../flight/constant-acceleration.ts';
import { mirrorPath } from '../flight/mirror.ts';
import { inducedBreakBetween } from '../flight/movement.ts';
import { fitPath } from '../flight/path-fit.ts';
import { movementFromSpin } from '../flight/spin-flight.ts';
import { tiltFromSpin } from '../flight/spin.ts';
import { dot, norm, scale, type Vector } from '../flight/vector.ts';
import { feetToM, rpmToRadps } from '../units/convert.ts';

/** Raised when the same facts would be read differently: exports and playback name it. */
export const SCIENCE_VERSION = 2;

/** Where a device does not send the extension: 5.5 ft in front of the rubber, so 55 ft from the rear point of the plate on a full mound. */
const ASSUMED_EXTENSION_M = feetToM(5.5);

/** One throw in numbers: what a view says of it from its measurement alone, before rounding. */
export type AnalysedThrow = Pick<
  ThrowView,
  | 'problem' | 'inferred' | 'speedMps' | 'verticalM' | 'armSideM' | 'flightTimeS' | 'flightTimeFrom' | 'releaseHeightM' | 'releaseArmSideM'
  | 'plateHeightM' | 'plateRightM' | 'verticalApproachRad' | 'spinRpm' | 'tiltRad' | 'efficiency' | 'standardErrors'
> & {
  /** From the release to the plate, in a right-hander's terms. */
  readonly path: ConstantAcceleration | Missing;
};

export interface Circumstances {
  /** Null for an unclaimed throw: arm side is then not defined. */
  readonly hand: Hand | null;
  readonly stage: Stage;
  readonly distanceM: number;
}

/** From what was measured to what it means. A measurement that contradicts itself gives a problem, never a wrong number. */
export function analyseThrow(body: ThrowBody, source: Pick<Source, 'sight' | 'axis' | 'units' | 'standardErrors'>, circumstances: Circumstances): AnalysedThrow {
  const measured = toSi(body, source.units);
  const seen = flightOf(measured, circumstances, source);
  const spin = spinOf(measured, source, seen.velocityMps);
  const analysed = { ...seen.readings, ...spin, inferred: source.sight === 'spin-only', problem: seen.problem };
  return inTheAthletesTerms(STAGE_HAS_PLATE[circumstances.stage] ? analysed : withoutPlate(analysed), circumstances.hand);
}

type FlightReadings = Omit<AnalysedThrow, 'problem' | 'inferred' | 'spinRpm' | 'tiltRad' | 'efficiency'>;
interface Seen {
  /** Right of the catcher positive where it says arm side: turned once, at the end. */
  readonly readings: FlightReadings;
  readonly velocityMps: Vector | null;
  readonly problem: string | null;
}

function flightOf(measured: MeasuredThrow, { distanceM }: Circumstances, source: Pick<Source, 'sight' | 'axis'>): Seen {
  const { flight, extensionM } = measured;
  const releaseYM = distanceM - (extensionM ?? ASSUMED_EXTENSION_M);
  switch (flight.kind) {
    case 'path': {
      const fit = fitPath(flight.samples, { fromYM: releaseYM, ...alongFlight(measured) });
      if (fit.kind === 'problem') return unusable(fit.sentence);
      return fromFlight(fit.release, fit.arrival, { verticalM: fit.errors.verticalM, armSideM: fit.errors.horizontalM });
    }
    case 'constant': {
      const path: ConstantAcceleration = flight;
      const release = stateAtY(path, releaseYM);
      const arrival = stateAtY(path, plate.frontYM);
      if (release === null || arrival === null || arrival.timeS <= release.timeS) return unusable('With this acceleration the ball does not fly from the release to the plate.');
      return fromFlight(release, arrival, null);
    }
    case 'summary':
      return fromSummary(measured, releaseYM, source);
  }
}

/** A measured axis says how much of the spin lies along the flight, which the way drag and lift fade depends on. */
function alongFlight({ flight, spin }: MeasuredThrow): { readonly alongSpinRadps?: number } {
  if (flight.kind !== 'path' || spin === null || spin.axis === null) return {};
  const first = flight.samples[0]!.positionM;
  const last = flight.samples.at(-1)!.positionM;
  const way: Vector = [last[0] - first[0], last[1] - first[1], last[2] - first[2]];
  return { alongSpinRadps: (rpmToRadps(spin.rateRpm) * dot(spin.axis, way)) / (norm(spin.axis) * norm(way)) };
}

function fromFlight(release: PathState, arrival: PathState, standardErrors: AnalysedThrow['standardErrors']): Seen {
  const moved = inducedBreakBetween(release, arrival);
  return {
    velocityMps: release.velocityMps,
    problem: null,
    readings: {
      speedMps: norm(release.velocityMps),
      verticalM: moved.verticalM,
      armSideM: moved.horizontalM,
      flightTimeS: arrival.timeS - release.timeS,
      flightTimeFrom: 'path',
      releaseHeightM: release.positionM[2],
      releaseArmSideM: release.positionM[0],
      plateHeightM: arrival.positionM[2],
      plateRightM: arrival.positionM[0],
      verticalApproachRad: verticalApproachRad(arrival.velocityMps),
      path: pathFromRelease(release, arrival) ?? 'problem',
      standardErrors,
    },
  };
}

function fromSummary(measured: MeasuredThrow, releaseYM: number, source: Pick<Source, 'sight' | 'axis'>): Seen {
  const { flight, spin } = measured;
  if (flight.kind !== 'summary') return unusable('The throw has no summary.');
  const distanceM = releaseYM - plate.frontYM;
  const flown = spin !== null && spin.tiltRad !== null && spin.efficiency !== null
    ? movementFromSpin({ releaseSpeedMps: flight.releaseSpeedMps, spinRpm: spin.rateRpm, tiltRad: spin.tiltRad, efficiency: spin.efficiency, distanceM, airDensityKgM3: standardAirDensityKgM3 })
    : null;
  const inferable = source.sight === 'spin-only' ? flown : null;
  const absent: Reading = source.sight === 'spin-only' && source.axis === 'none' ? 'not-visible' : 'not-sent';
  return {
    velocityMps: null,
    problem: null,
    readings: {
      speedMps: flight.releaseSpeedMps,
      verticalM: flight.verticalM ?? inferable?.verticalM ?? absent,
      armSideM: flight.rightM ?? inferable?.horizontalM ?? absent,
      flightTimeS: flight.flightTimeS ?? flown?.timeS ?? flightTimeFromSpeedS(flight.releaseSpeedMps, distanceM, standardAirDensityKgM3),
      flightTimeFrom: flight.flightTimeS !== null ? 'device' : flown !== null ? 'spin' : 'speed',
      releaseHeightM: flight.releaseM?.[2] ?? 'not-sent',
      releaseArmSideM: flight.releaseM?.[0] ?? 'not-sent',
      plateHeightM: flight.plate?.heightM ?? 'not-sent',
      plateRightM: flight.plate?.rightM ?? 'not-sent',
      verticalApproachRad: 'not-sent',
      path: source.sight === 'spin-only' ? 'not-visible' : 'not-sent',
      standardErrors: null,
    },
  };
}

function unusable(problem: string): Seen {
  const readings: FlightReadings = {
    speedMps: 'problem', verticalM: 'problem', armSideM: 'problem', flightTimeS: 'problem', flightTimeFrom: null, releaseHeightM: 'problem', releaseArmSideM: 'problem',
    plateHeightM: 'problem', plateRightM: 'problem', verticalApproachRad: 'problem', path: 'problem', standardErrors: null,
  };
  return { readings, velocityMps: null, problem };
}

function spinOf({ spin }: MeasuredThrow, source: Pick<Source, 'axis'>, velocityMps: Vector | null): Pick<AnalysedThrow, 'spinRpm' | 'tiltRad' | 'efficiency'> {
  const absent: Reading = source.axis === 'none' ? 'not-visible' : 'not-sent';
  if (spin === null) return { spinRpm: 'not-sent', tiltRad: absent, efficiency: absent };
  const turning = spin.axis === null ? null : scale(spin.axis, rpmToRadps(spin.rateRpm) / norm(spin.axis));
  const tilt = turning === null ? null : tiltFromSpin(turning, velocityMps ?? undefined);
  return {
    spinRpm: spin.rateRpm,
    tiltRad: tilt?.tiltRad ?? spin.tiltRad ?? absent,
    efficiency: tilt?.efficiency ?? spin.efficiency ?? absent,
  };
}

function withoutPlate(analysed: AnalysedThrow): AnalysedThrow {
  return { ...analysed, plateHeightM: 'not-defined', plateRightM: 'not-defined', verticalApproachRad: 'not-defined', path: 'not-defined' };
}

/** The one mirror: a right-hander's arm side is −x, a left-hander's +x. Tilt and plate place stay as the eye sees them. */
function inTheAthletesTerms(analysed: AnalysedThrow, hand: Hand | null): AnalysedThrow {
  const turn = (right: Reading): Reading => {
    if (hand === null) return 'not-defined';
    if (typeof right !== 'number') return right;
    return hand === 'right' ? -right : right;
  };
  const path = hand === 'left' && typeof analysed.path !== 'string' ? mirrorPath(analysed.path) : analysed.path;
  return { ...analysed, armSideM: turn(analysed.armSideM), releaseArmSideM: turn(analysed.releaseArmSideM), path };
}
