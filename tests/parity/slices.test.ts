import { describe, expect, it } from 'vitest';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger } from '../../core/session/ledger.ts';
import { moundView } from '../../core/session/view.ts';
import { growthsThatDiffer, placesThatDiffer } from './every-place.ts';
import { remembranceThatDiffers } from './from-scratch.ts';
import { busyDay } from './sessions.ts';

/** A small sample of what slices.prove.ts does with many seeds. */
const SEEDS = [1, 2, 3, 4];

describe('a busy day', () => {
  it.each(SEEDS)('with seed %i plays back from its slices as it was shown live', (seed) => {
    expect(placesThatDiffer(busyDay(seed, 'north-1', 'summary', 80))).toEqual([]);
  });

  it('in which throws of several kinds change hands counts them in one order, live and played back', () => {
    expect(placesThatDiffer(busyDay(1069, 'north-1', 'summary', 160))).toEqual([]);
  });

  it('in which a session gives some of its fastballs away brings the baseline along that all of them formed', () => {
    expect(placesThatDiffer(busyDay(1197, 'north-1', 'summary', 160))).toEqual([]);
  });

  it('of paths with a measured axis, in wind, plays back with its seam effects as it was shown live', () => {
    const day = busyDay(5, 'north-1', 'path', 60);
    expect(placesThatDiffer(day)).toEqual([]);
    const { throws, session } = moundView(day.facts.reduce(foldFact, emptyLedger('north-1')), day.sessions[0]!);
    expect(throws.some(({ unexplained }) => unexplained.kind === 'unexplained' && unexplained.measurement !== null)).toBe(true);
    expect(session!.trials.map(({ seamEffect }) => seamEffect.kind)).not.toContain('not-visible');
  });

  it('shows at every place, whatever was corrected, moved or tagged, what it would show to whom nothing is remembered', () => {
    expect(remembranceThatDiffers(busyDay(11, 'north-1', 'summary', 110))).toEqual([]);
  });

  it.each(SEEDS)('with seed %i is followed while it grows as it is played back later', (seed) => {
    expect(growthsThatDiffer(busyDay(seed, 'north-1', 'summary', 80))).toEqual([]);
  });
});
