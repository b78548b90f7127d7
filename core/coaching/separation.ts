import type { Reading, SeparationView } from '../facts/views.ts';
import type { FastballBaseline } from './baseline.ts';

/** What separation needs of a throw; arm side positive, SI. */
export interface SeparableThrow {
  readonly speedMps: Reading;
  readonly verticalM: Reading;
  readonly armSideM: Reading;
  readonly flightTimeS: Reading;
  readonly releaseHeightM: Reading;
  readonly releaseArmSideM: Reading;
}

/** A throw minus the fastball baseline. Slower is a negative speed, later a positive arrival. What either side lacks stays lacking, with its reason. */
export function separationFrom(thrown: SeparableThrow, baseline: FastballBaseline): SeparationView {
  const height = minus(thrown.releaseHeightM, baseline.releaseHeightM);
  const side = minus(thrown.releaseArmSideM, baseline.releaseArmSideM);
  return {
    baseline: baseline.number,
    speedMps: minus(thrown.speedMps, baseline.speedMps),
    verticalM: minus(thrown.verticalM, baseline.verticalM),
    armSideM: minus(thrown.armSideM, baseline.armSideM),
    arrivalS: minus(thrown.flightTimeS, baseline.flightTimeS),
    releaseShiftM: typeof height !== 'number' ? height : typeof side !== 'number' ? side : Math.hypot(height, side),
  };
}

function minus(thrown: Reading, baseline: Reading): Reading {
  if (typeof thrown !== 'number') return thrown;
  return typeof baseline !== 'number' ? baseline : thrown - baseline;
}
