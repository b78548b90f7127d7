import type { BaselineView, PathView, ThrowView } from '../facts/views.ts';
import { armFromFastball, type Arm, type KnownFastball, type Span } from '../flight/arm.ts';
import { flightTimeFromSpeedS } from '../flight/arrival.ts';
import { plate, standardGravityMps2 } from '../flight/ball.ts';
import { stateAtY } from '../flight/constant-acceleration.ts';
import { median } from '../statistics/centre.ts';
import { correctedMad } from '../statistics/spread.ts';
import { feetToM, inchesToM } from '../units/convert.ts';

/** What of an arm is not the athlete's own: typical of changeups, or the usual place of a release. */
export type Assumed = 'release' | 'direction' | 'speed' | 'spin' | 'efficiency';

export interface OwnArm {
  readonly arm: Arm;
  /** To be said beside whatever rests on the arm. */
  readonly assumed: readonly Assumed[];
}

/** What a screen knows of the athlete; all of one stage. */
export interface ArmEvidence {
  readonly baseline: BaselineView;
  /** Of the pitch that is worked on; excluded ones and those with a problem are left out here. */
  readonly thrown: readonly ThrowView[];
  /** From the rubber to the rear point of the plate. */
  readonly distanceM: number;
  readonly airDensityKgM3: number;
}

/** Where a release is when the device does not see it: 5.5 ft in front of the rubber, 6 ft up, 2 ft to the arm side. From memory. */
const usualRelease = { extensionM: feetToM(5.5), heightM: feetToM(6), armSideM: feetToM(2) } as const;
/** Where a fastball is aimed when nobody saw it: over the middle, 2½ ft up. */
const middleOfZone = { xM: 0, zM: inchesToM(30) } as const;
/** How many robust spreads of the own throws belong to the arm, either way: about 95 % of them. */
const SPREADS = 2;

/**
 * The arm of an athlete as the session has shown it, in a right-hander's terms: the fastball baseline, and of speed, spin and
 * efficiency the middle of at least five own throws with two robust spreads either way. What was not seen is assumed, and said.
 */
export function ownArm({ baseline, thrown, distanceM, airDensityKgM3 }: ArmEvidence): OwnArm {
  const counted = thrown.filter(({ excluded, problem }) => excluded === null && problem === null);
  const spanOf = (of: (one: ThrowView) => unknown): Span | null => ownSpan(counted.map(of).filter((value) => typeof value === 'number'));
  const speedMps = spanOf((one) => one.speedMps);
  const spinRpm = spanOf((one) => one.spinRpm);
  const efficiency = spanOf((one) => one.efficiency);
  const seen = typeof baseline.path !== 'string';
  const known = { ...(speedMps && { speedMps }), ...(spinRpm && { spinRpm }), ...(efficiency && { efficiency: withinOne(efficiency) }) };
  const fastball = typeof baseline.path === 'string' ? assumedFastball(baseline, distanceM, airDensityKgM3) : fastballOn(baseline.path, baseline);
  const missing: readonly [boolean, Assumed][] = [
    [!seen, 'release'], [!seen, 'direction'], [speedMps === null, 'speed'], [spinRpm === null, 'spin'], [efficiency === null, 'efficiency'],
  ];
  return { arm: armFromFastball(fastball, { ...known, airDensityKgM3 }), assumed: missing.filter(([lacks]) => lacks).map(([, what]) => what) };
}

function ownSpan(values: readonly number[]): Span | null {
  const middle = median(values);
  const spread = correctedMad(values);
  return middle === null || spread === null ? null : { low: middle - SPREADS * spread, high: middle + SPREADS * spread };
}

function withinOne({ low, high }: Span): Span {
  return { low: Math.max(0, low), high: Math.min(1, high) };
}

function fastballOn(path: PathView, { verticalM, armSideM }: BaselineView): KnownFastball {
  const arrival = stateAtY(path, plate.frontYM)?.positionM;
  const place = arrival === undefined ? middleOfZone : { xM: arrival[0], zM: arrival[2] };
  return { releaseM: path.positionM, velocityMps: path.velocityMps, plate: place, verticalM, armSideM };
}

/** A fastball of this speed and these breaks from the usual release, aimed at the middle of the zone. */
function assumedFastball(baseline: BaselineView, distanceM: number, airDensityKgM3: number): KnownFastball {
  const { speedMps, verticalM, armSideM } = baseline;
  const or = (reading: BaselineView['releaseHeightM'], usual: number): number => (typeof reading === 'number' ? reading : usual);
  const releaseYM = distanceM - usualRelease.extensionM;
  const releaseM = [-or(baseline.releaseArmSideM, usualRelease.armSideM), releaseYM, or(baseline.releaseHeightM, usualRelease.heightM)] as const;
  const timeS = flightTimeFromSpeedS(speedMps, releaseYM - plate.frontYM, airDensityKgM3);
  // Gravity and the breaks take the ball to the middle of the zone if it leaves like this.
  const rightMps = (middleOfZone.xM + armSideM - releaseM[0]) / timeS;
  const upMps = (middleOfZone.zM - verticalM - releaseM[2]) / timeS + 0.5 * standardGravityMps2 * timeS;
  const forwardMps = Math.sqrt(Math.max(0, speedMps ** 2 - rightMps ** 2 - upMps ** 2));
  return { releaseM, velocityMps: [rightMps, -forwardMps, upMps], plate: middleOfZone, verticalM, armSideM };
}
