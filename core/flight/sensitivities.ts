import { degToRad, mphToMps } from '../units/convert.ts';
import { separationBySpin, type Arm, type ArmThrow, type Separation } from './arm.ts';

/** How far a throw of this athlete moves on the separation plane for a step of each thing an athlete can change. */
export interface Sensitivities {
  /** Clockwise as the pitcher sees it. */
  readonly perTenDegrees: Separation;
  readonly perHundredRpm: Separation;
  readonly perMph: Separation;
  readonly perFivePoints: Separation;
}

const tenDegreesRad = degToRad(10);
const hundredRpm = 100;
const oneMphMps = mphToMps(1);
const fivePoints = 0.05;

/**
 * Central differences of real flights, over the whole step: half of it either way. Where efficiency ends (0, 1) the difference is
 * one-sided. Null when one of the throws does not get to the plate.
 */
export function sensitivities(arm: Arm, thrown: ArmThrow): Sensitivities | null {
  const half = fivePoints / 2;
  const middle = Math.min(1 - half, Math.max(half, thrown.efficiency));
  const perTenDegrees = between(arm, { ...thrown, tiltRad: thrown.tiltRad - tenDegreesRad / 2 }, { ...thrown, tiltRad: thrown.tiltRad + tenDegreesRad / 2 });
  const perHundredRpm = between(arm, { ...thrown, spinRpm: thrown.spinRpm - hundredRpm / 2 }, { ...thrown, spinRpm: thrown.spinRpm + hundredRpm / 2 });
  const perMph = between(arm, { ...thrown, speedMps: thrown.speedMps - oneMphMps / 2 }, { ...thrown, speedMps: thrown.speedMps + oneMphMps / 2 });
  const perFivePoints = between(arm, { ...thrown, efficiency: middle - half }, { ...thrown, efficiency: middle + half });
  if (perTenDegrees === null || perHundredRpm === null || perMph === null || perFivePoints === null) return null;
  return { perTenDegrees, perHundredRpm, perMph, perFivePoints };
}

function between(arm: Arm, from: ArmThrow, to: ArmThrow): Separation | null {
  const before = separationBySpin(arm, from);
  const after = separationBySpin(arm, to);
  if (before === null || after === null) return null;
  return { verticalM: after.verticalM - before.verticalM, armSideM: after.armSideM - before.armSideM };
}
