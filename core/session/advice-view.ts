import { mayThrow } from '../coaching/arm-care.ts';
import { gripAndTimeMixed, nextBlock } from '../coaching/blocks.ts';
import { fatigueSign } from '../coaching/fatigue.ts';
import { honestArm } from '../coaching/honest-arm.ts';
import type { ComparisonEntry, ComparisonsView, HonestArm } from '../facts/advice-view.ts';
import type { ArmCare, FatigueSign } from '../facts/care-view.ts';
import type { ThrowView } from '../facts/views.ts';
import { bodyReadings } from './body-readings.ts';
import type { Ledger, SessionEntry } from './ledger.ts';
import { nextComparison } from './planned.ts';

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

export function comparisonsView({ id, planned }: SessionEntry, throws: readonly ThrowView[], care: ArmCare): ComparisonsView {
  const here = planned.comparisons.map((one) => {
    const thrown = lettersOf(one, id, throws);
    const pair = one.days.find(({ session }) => session === id);
    const block = pair === undefined || !mayThrow(care) ? null : nextBlock(care, thrown, [pair.a, pair.b]);
    return { ...one, gripAndTimeMixed: gripAndTimeMixed(thrown), nextBlock: block };
  });
  return { nextK: nextComparison(planned), here, before: planned.comparisonsBefore };
}

/** The trials of the throws that a comparison holds against each other here, in the order thrown. */
function lettersOf({ stage, days }: ComparisonEntry, session: string, throws: readonly ThrowView[]): string[] {
  const day = days.find((one) => one.session === session);
  return sound(throws).flatMap(({ trial, stage: where }) => (trial !== null && where === stage && (trial === day?.a || trial === day?.b) ? [trial] : []));
}

function sound(throws: readonly ThrowView[]): ThrowView[] {
  return throws.filter(({ excluded, problem }) => excluded === null && problem === null);
}

function speeds(throws: readonly ThrowView[]): number[] {
  return sound(throws).flatMap(({ speedMps }) => (typeof speedMps === 'number' ? [speedMps] : []));
}
