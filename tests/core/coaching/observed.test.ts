import { describe, expect, it } from 'vitest';
import { observedFamilies, observedOn, observedWeight } from '../../../core/coaching/observed.ts';
import type { ObservationView } from '../../../core/facts/advice-view.ts';
import { FAMILIES, OBSERVATIONS } from '../../../core/facts/vocabulary.ts';

const tick = (what: ObservationView['what'], trial: string | null, seen = true): ObservationView => ({ atMs: 0, what, seen, place: null, trial });

describe('what a coach has seen', () => {
  it('on a trial is what was ticked last, and an observation that was taken back is none', () => {
    const said = [tick('slight-cut', 'A'), tick('forced-turn', 'A'), tick('slight-cut', 'A', false), tick('straight-behind', 'B'), tick('slight-cut', null)];
    expect(observedOn('A', said)).toEqual(['forced-turn']);
    expect(observedOn('C', said)).toEqual([]);
  });

  it('counts once for the family of its trial, a split by its intent, and for none where nobody said a family', () => {
    const trials = [{ letter: 'A', intent: 'changeup', family: 'seam-effect' }, { letter: 'B', intent: 'changeup', family: 'seam-effect' }, { letter: 'C', intent: 'split' }, { letter: 'D', intent: 'changeup' }] as const;
    const said = ['A', 'B', 'C', 'D'].map((letter) => tick('slight-cut', letter));
    expect(observedFamilies(trials, said)).toEqual([{ family: 'seam-effect', what: 'slight-cut' }, { family: 'split', what: 'slight-cut' }]);
  });

  it('weighs for a seam effect alone, and a loose wrist for nothing', () => {
    const weights = OBSERVATIONS.map((what) => FAMILIES.map((family) => Math.sign(observedWeight({ family, what }))));
    expect(Object.fromEntries(OBSERVATIONS.map((what, index) => [what, weights[index]]))).toEqual({
      'loose-wrist-and-forearm': [0, 0, 0], 'forced-turn': [0, -1, 0], 'slight-cut': [0, 1, 0], 'straight-behind': [0, -1, 0],
    });
  });
});
