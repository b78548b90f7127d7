import { mpsToMph } from '../units/convert.ts';
import type { DeviceUnits, ThrowBody } from './frames.ts';
import { toSi, type MeasuredFlight, type MeasuredThrow } from './si.ts';
import type { Stage } from './vocabulary.ts';

/** Where and why a throw cannot have happened. */
export interface Impossibility {
  readonly path: string;
  readonly sentence: string;
}

interface StageBounds {
  readonly slowestMps: number;
  readonly fastestMps: number;
  readonly highestM: number;
  readonly longestFlightS: number;
}

/**
 * What a thrown baseball can do at each stage. House rule, wide on purpose: it refuses broken units and broken
 * devices, not surprising throws. The fastest pitch on record left the hand near 47 m/s (from memory).
 */
const BOUNDS: Readonly<Record<Stage, StageBounds>> = {
  'catch-play': { slowestMps: 5, fastestMps: 50, highestM: 10, longestFlightS: 4 },
  'long-toss': { slowestMps: 8, fastestMps: 50, highestM: 30, longestFlightS: 7 },
  'flat-ground': { slowestMps: 10, fastestMps: 50, highestM: 6, longestFlightS: 2.5 },
  mound: { slowestMps: 10, fastestMps: 50, highestM: 6, longestFlightS: 2.5 },
  hitters: { slowestMps: 10, fastestMps: 50, highestM: 6, longestFlightS: 2.5 },
};
/** Without a session the stage is unknown, so only what no stage allows is refused. */
const ANY_STAGE: StageBounds = { slowestMps: 5, fastestMps: 50, highestM: 30, longestFlightS: 7 };

const LARGEST_SIDE_M = 6;
const LOWEST_M = -1;
const LARGEST_ACCELERATION_MPS2 = 60;
const FASTEST_SPIN_RPM = 5000;
const LARGEST_BREAK_M = 1.5;
const LARGEST_EXTENSION_M = 3.5;
/** How far behind the thrower's line a device may still see the ball in the hand. */
const BEHIND_RUBBER_M = 2;
const DEFAULT_FARTHEST_M = 120;

/**
 * The first thing about a throw that cannot be, or null. `stage` is that of the mound's open session; null when none is open.
 */
export function impossibility(body: ThrowBody, units: DeviceUnits, stage: { readonly stage: Stage; readonly distanceM: number } | null): Impossibility | null {
  const measured = toSi(body, units);
  const bounds = stage === null ? ANY_STAGE : BOUNDS[stage.stage];
  const farthestM = (stage?.distanceM ?? DEFAULT_FARTHEST_M) + BEHIND_RUBBER_M;
  return inFlight(measured.flight, bounds, farthestM) ?? inSpin(measured);
}

function inSpin({ spin, extensionM }: MeasuredThrow): Impossibility | null {
  if (spin !== null && spin.rateRpm > FASTEST_SPIN_RPM) {
    return { path: 'body.spin.rate', sentence: `a spin of ${spin.rateRpm.toFixed(0)} rpm is beyond the ${FASTEST_SPIN_RPM} rpm that a thrown ball can have; check that the rate is in rpm` };
  }
  if (extensionM !== null && extensionM > LARGEST_EXTENSION_M) {
    return { path: 'body.extension', sentence: `an extension of ${extensionM.toFixed(2)} m is beyond ${LARGEST_EXTENSION_M} m; check units.distance` };
  }
  return null;
}

function inFlight(flight: MeasuredFlight, bounds: StageBounds, farthestM: number): Impossibility | null {
  switch (flight.kind) {
    case 'path': return inPath(flight, bounds, farthestM);
    case 'constant': return inConstant(flight, bounds, farthestM);
    case 'summary': return inSummary(flight, bounds, farthestM);
  }
}

function inPath({ samples }: Extract<MeasuredFlight, { kind: 'path' }>, bounds: StageBounds, farthestM: number): Impossibility | null {
  const first = samples[0]!;
  const last = samples[samples.length - 1]!;
  const seconds = last.timeS - first.timeS;
  if (seconds > bounds.longestFlightS) {
    return { path: 'body.path', sentence: `the path lasts ${seconds.toFixed(2)} s, longer than the ${bounds.longestFlightS} s a throw takes here; check that times are in seconds` };
  }
  if (first.positionM[1] <= last.positionM[1]) {
    return { path: 'body.path', sentence: 'the path flies away from the plate; y must fall from release to plate' };
  }
  const misplaced = placed(first.positionM, 'body.path.0', bounds, farthestM);
  if (misplaced !== null) return misplaced;
  return fast(Math.hypot(...subtract(last.positionM, first.positionM)) / seconds, 'body.path', bounds, 0.6);
}

function inConstant(flight: Extract<MeasuredFlight, { kind: 'constant' }>, bounds: StageBounds, farthestM: number): Impossibility | null {
  const misplaced = placed(flight.positionM, 'body.constant.start', bounds, farthestM);
  if (misplaced !== null) return misplaced;
  if (flight.velocityMps[1] >= 0) {
    return { path: 'body.constant.velocity.1', sentence: 'the ball flies away from the plate; the y of velocity must be negative' };
  }
  const pull = Math.hypot(...flight.accelerationMps2);
  if (pull > LARGEST_ACCELERATION_MPS2) {
    return { path: 'body.constant.acceleration', sentence: `an acceleration of ${pull.toFixed(1)} m/s² is beyond the ${LARGEST_ACCELERATION_MPS2} m/s² that air and gravity can give; check units.distance` };
  }
  return fast(Math.hypot(...flight.velocityMps), 'body.constant.velocity', bounds);
}

function inSummary(flight: Extract<MeasuredFlight, { kind: 'summary' }>, bounds: StageBounds, farthestM: number): Impossibility | null {
  const { releaseSpeedMps, plateSpeedMps, verticalM, rightM, releaseM, flightTimeS } = flight;
  for (const [name, moved] of [['verticalBreak', verticalM], ['horizontalBreak', rightM]] as const) {
    if (moved !== null && Math.abs(moved) > LARGEST_BREAK_M) {
      return { path: `body.summary.${name}`, sentence: `a break of ${moved.toFixed(2)} m is beyond ${LARGEST_BREAK_M} m; check units.movement` };
    }
  }
  if (plateSpeedMps !== null && plateSpeedMps > releaseSpeedMps) {
    return { path: 'body.summary.plateSpeed', sentence: 'the ball arrives faster than it left; the air only slows it' };
  }
  if (flightTimeS !== null && flightTimeS > bounds.longestFlightS) {
    return { path: 'body.summary.flightTime', sentence: `a flight of ${flightTimeS.toFixed(2)} s is longer than the ${bounds.longestFlightS} s a throw takes here; send seconds` };
  }
  const misplaced = releaseM === null ? null : placed(releaseM, 'body.summary.release', bounds, farthestM);
  return misplaced ?? fast(releaseSpeedMps, 'body.summary.releaseSpeed', bounds);
}

function placed([x, y, z]: readonly [number, number, number], path: string, bounds: StageBounds, farthestM: number): Impossibility | null {
  if (y <= 0) return { path, sentence: `the throw begins at y = ${y.toFixed(2)} m, behind the plate; y runs from the plate towards the thrower` };
  if (y > farthestM) return { path, sentence: `the throw begins at y = ${y.toFixed(2)} m, behind the thrower at ${(farthestM - BEHIND_RUBBER_M).toFixed(2)} m; check units.distance or the stage's distance` };
  if (Math.abs(x) > LARGEST_SIDE_M) return { path, sentence: `the throw begins ${x.toFixed(2)} m to the side, beyond ${LARGEST_SIDE_M} m; check the axes and units.distance` };
  if (z < LOWEST_M || z > bounds.highestM) return { path, sentence: `the throw begins at a height of ${z.toFixed(2)} m; check the axes and units.distance` };
  return null;
}

/** `ease` lowers the slow bound for a mean over a whole flight. */
function fast(speedMps: number, path: string, bounds: StageBounds, ease = 1): Impossibility | null {
  if (speedMps >= bounds.slowestMps * ease && speedMps <= bounds.fastestMps) return null;
  return { path, sentence: `a speed of ${speedMps.toFixed(1)} m/s (${mpsToMph(speedMps).toFixed(0)} mph) is outside the ${bounds.slowestMps} to ${bounds.fastestMps} m/s of a throw here; check the declared units` };
}

function subtract(a: readonly [number, number, number], b: readonly [number, number, number]): [number, number, number] {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
