import { expect, test } from 'vitest';
import { seamBoundM, seamEffect } from '../../../core/coaching/seam-effect.ts';
import { tallyOf } from '../../../core/statistics/tally.ts';
import { moments } from '../../../core/statistics/moments.ts';
import { degreeRad, inchM } from '../flight/feet-and-miles.ts';
import { acrossOfTrial, type Steady } from './seam-throws.ts';

const runs = 400;
const throws = 200;
const movementM = 18 * inchM;
const biasRad = 3 * degreeRad;
const outdoorsM = seamBoundM({ axisBiasRad: biasRad, movementM, wind: 'outdoors' });
const indoorsM = seamBoundM({ axisBiasRad: 0, movementM, wind: 'indoors' });

const trials = (count: number, steadyOf: (seed: number) => Steady, length = throws): number[][] =>
  Array.from({ length: count }, (_, i) => acrossOfTrial(1000 + i, length, steadyOf(i)));

/** The throw at which a trial is first called a seam effect, looking after every one; Infinity where it never is. */
function firstSeen(across: readonly number[], boundM: number): number {
  for (let n = 1; n <= across.length; n += 1) if (seamEffect(tallyOf(across.slice(0, n)), boundM).kind === 'seen') return n;
  return Infinity;
}

const shareSeen = (all: readonly number[][], boundM: number): number => all.filter((across) => firstSeen(across, boundM) <= throws).length / all.length;
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

test('without a seam effect, with 3° of axis bias and 1 m/s of crosswind to the same side, 200 throws are called a seam effect in at most 5 % of runs', () => {
  const all = trials(runs, (i) => (i % 2 === 0 ? { seam: 0, axisBiasRad: biasRad, windMps: 1 } : { seam: 0, axisBiasRad: -biasRad, windMps: -1 }));
  const shifts = all.map((across) => moments(across)!.mean);
  const shiftM = shifts.reduce((sum, mean) => sum + Math.abs(mean), 0) / runs;
  const largestM = shifts.reduce((most, mean) => Math.max(most, Math.abs(mean)), 0);
  const scatterM = all.reduce((sum, across) => sum + moments(across)!.sd!, 0) / runs;
  const shipped = shareSeen(all, outdoorsM);
  const bare = shareSeen(all, indoorsM);
  console.log(
    `no seam effect, ${runs} runs of ${throws} throws: axis and wind shift the mean by ${(shiftM / inchM).toFixed(2)} in (at most ${(largestM / inchM).toFixed(2)}), throws scatter by ${(scatterM / inchM).toFixed(2)} in; `
    + `seen: ${percent(shipped)} at the bound of ${(outdoorsM / inchM).toFixed(2)} in, ${percent(bare)} at 2 in alone`,
  );
  expect(shiftM / inchM).toBeGreaterThan(1.2); // the two errors do add up
  expect(shipped).toBeLessThanOrEqual(0.05);
});

test('where axis and wind shift the throws by just the bound, as hard as it gets, they are called a seam effect in at most 5 % of runs', () => {
  const steady: Steady = { seam: 0, axisBiasRad: -biasRad, windMps: -1 };
  const tiltRad = 45 * degreeRad;
  const shiftM = Math.abs(moments(acrossOfTrial(7, 6000, steady, tiltRad))!.mean);
  const seen = Array.from({ length: runs }, (_, i) => firstSeen(acrossOfTrial(5000 + i, 80, steady, tiltRad), shiftM)).filter((first) => first < Infinity).length;
  console.log(`bound on the shift itself, ${(shiftM / inchM).toFixed(3)} in: seen in ${percent(seen / runs)} of ${runs} runs of 80 throws`);
  expect(seen / runs).toBeLessThanOrEqual(0.05);
});

test('against zero instead of a bound the same throws would nearly always be called a seam effect', () => {
  const all = trials(40, () => ({ seam: 0, axisBiasRad: biasRad, windMps: 1 }));
  const share = shareSeen(all, 0);
  console.log(`the same held against zero: seen in ${percent(share)}`);
  expect(share).toBeGreaterThan(0.9);
});

test('how many throws a seam effect takes to be seen', () => {
  const halfSeen = (all: readonly number[][], boundM: number): number => {
    const at = all.map((across) => firstSeen(across, boundM)).sort((a, b) => a - b);
    const within = (count: number): string => percent(at.filter((first) => first <= count).length / at.length);
    console.log(`  bound ${(boundM / inchM).toFixed(2)} in: half are seen by throw ${at[at.length / 2]}; by 10 ${within(10)}, by 15 ${within(15)}, by 40 ${within(40)}`);
    return at[at.length / 2]!;
  };
  const taken = [0.02, 0.03, 0.04, 0.05, 0.06, 0.08].map((seam) => {
    const all = trials(100, () => ({ seam, axisBiasRad: 0, windMps: 0 }), 40);
    console.log(`lateral coefficient ${seam.toFixed(2)}, ${(all.reduce((sum, across) => sum + moments(across)!.mean, 0) / 100 / inchM).toFixed(2)} in, 100 runs of 40 throws`);
    return { indoors: halfSeen(all, indoorsM), outdoors: halfSeen(all, outdoorsM) };
  });
  expect(taken[0]!.indoors).toBe(Infinity); // 1.8 in is less than the two inches that nobody named
  expect(taken[3]!.indoors).toBeLessThanOrEqual(12);
  expect(taken[4]!.outdoors).toBeLessThanOrEqual(40);
  expect(taken[5]!.outdoors).toBeLessThanOrEqual(12);
});
