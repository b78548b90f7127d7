import type { MoundAir } from '../facts/air-says.ts';
import type { ThrowBody } from '../facts/frames.ts';
import { toSi } from '../facts/si.ts';
import type { Missing, Reading, ThrowView } from '../facts/views.ts';
import { STAGE_HAS_PLATE, type Hand, type Stage } from '../facts/vocabulary.ts';
import type { ConstantAcceleration } from '../flight/constant-acceleration.ts';
import { mirrorPath } from '../flight/mirror.ts';
import { airOf } from './air-of.ts';
import { flightOf } from './flight-of.ts';
import type { Seer } from './seer.ts';
import { spinOf } from './spin-of.ts';
import { unexplainedFor, unexplainedOf } from './unexplained-of.ts';

/**
 * Raised when the same facts would be read differently: exports and playback name it.
 * 2: paths are fitted by the equations of motion. 3: throws fly in the air that was said of the mound, what a device does not
 * tell of the spin is filled in from the path, and the movement that the spin does not explain is told.
 */
export const SCIENCE_VERSION = 3;

/** One throw in numbers: what a view says of it from its measurement alone, before rounding. */
export type AnalysedThrow = Pick<
  ThrowView,
  | 'problem' | 'inferred' | 'speedMps' | 'verticalM' | 'armSideM' | 'flightTimeS' | 'flightTimeFrom' | 'releaseHeightM' | 'releaseArmSideM'
  | 'extensionM' | 'plateHeightM' | 'plateRightM' | 'plateSpeedMps' | 'verticalApproachRad' | 'horizontalApproachRad'
  | 'spinRpm' | 'tiltRad' | 'efficiency' | 'gyroRad' | 'spinFrom' | 'seamAxis' | 'unexplained' | 'standardErrors'
> & {
  /** From the release to the plate, in a right-hander's terms. */
  readonly path: ConstantAcceleration | Missing;
};

export interface Circumstances {
  /** Null for an unclaimed throw: arm side is then not defined. */
  readonly hand: Hand | null;
  readonly stage: Stage;
  readonly distanceM: number;
  /** As last said before the throw; null, or absent, when nobody said. */
  readonly air?: MoundAir | null;
}

/** From what was measured to what it means. A measurement that contradicts itself gives a problem, never a wrong number. */
export function analyseThrow(body: ThrowBody, source: Seer, { hand, stage, distanceM, air = null }: Circumstances): AnalysedThrow {
  const measured = toSi(body, source.units);
  const flown = airOf(air);
  const seen = flightOf(measured, distanceM, flown, source);
  const spin = spinOf(measured, source, seen.sighting, flown);
  const { readings } = seen;
  const atPlate = <T>(reading: T): T | 'not-defined' => (STAGE_HAS_PLATE[stage] ? reading : 'not-defined');
  // Name by name: spreading objects of so many names into one another costs more than the numbers do.
  return {
    problem: seen.problem,
    inferred: source.sight === 'spin-only',
    speedMps: readings.speedMps,
    verticalM: readings.verticalM,
    armSideM: towardsArmSide(readings.armSideM, hand),
    flightTimeS: readings.flightTimeS,
    flightTimeFrom: readings.flightTimeFrom,
    releaseHeightM: readings.releaseHeightM,
    releaseArmSideM: towardsArmSide(readings.releaseArmSideM, hand),
    extensionM: measured.extensionM ?? 'not-sent',
    plateHeightM: atPlate(readings.plateHeightM),
    plateRightM: atPlate(readings.plateRightM),
    plateSpeedMps: atPlate(readings.plateSpeedMps),
    verticalApproachRad: atPlate(readings.verticalApproachRad),
    horizontalApproachRad: towardsArmSide(atPlate(readings.horizontalApproachRad), hand),
    spinRpm: spin.readings.spinRpm,
    tiltRad: spin.readings.tiltRad,
    efficiency: spin.readings.efficiency,
    gyroRad: spin.readings.gyroRad,
    spinFrom: spin.readings.spinFrom,
    seamAxis: body.seams === undefined ? null : { latitudeDeg: body.seams.latitude, longitudeDeg: body.seams.longitude },
    unexplained: unexplainedFor(hand, unexplainedOf(seen, spin.told, flown, source)),
    standardErrors: readings.standardErrors,
    path: pathOf(atPlate(readings.path), hand),
  };
}

/** The one mirror: a right-hander's arm side is −x, a left-hander's +x. Tilt, gyro and plate place stay as the eye sees them. */
function towardsArmSide(right: Reading, hand: Hand | null): Reading {
  if (hand === null) return 'not-defined';
  if (typeof right !== 'number') return right;
  return hand === 'right' ? -right : right;
}

function pathOf(path: ConstantAcceleration | Missing, hand: Hand | null): ConstantAcceleration | Missing {
  return hand === 'left' && typeof path !== 'string' ? mirrorPath(path) : path;
}
