import { fatigueSign } from '../coaching/fatigue.ts';
import { honestArm } from '../coaching/honest-arm.ts';
import type { HonestArm } from '../facts/advice-view.ts';
import type { FatigueSign } from '../facts/care-view.ts';
import type { ThrowView } from '../facts/views.ts';
import { bodyReadings } from './body-readings.ts';
import type { Ledger } from './ledger.ts';

/** Of the present stage: what is worked on against the fastballs. */
export function honestArmView(worked: readonly ThrowView[], current: readonly ThrowView[], entries: Ledger['throws']): HonestArm {
  const readings = (throws: readonly ThrowView[]) => sound(throws).map((thrown) => bodyReadings(entries[thrown.place]!, thrown));
  const fastballs = current.filter(({ fastball }) => fastball);
  return honestArm({ changeups: readings(worked), fastballs: readings(fastballs), fastballSpeedsMps: speeds(fastballs) });
}

/** From the fastballs of the present stage. */
export function fatigueView(current: readonly ThrowView[]): FatigueSign {
  return fatigueSign(speeds(current.filter(({ fastball }) => fastball)));
}

function sound(throws: readonly ThrowView[]): ThrowView[] {
  return throws.filter(({ excluded, problem }) => excluded === null && problem === null);
}

function speeds(throws: readonly ThrowView[]): number[] {
  return sound(throws).flatMap(({ speedMps }) => (typeof speedMps === 'number' ? [speedMps] : []));
}
