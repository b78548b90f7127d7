import { describe, expect, it } from 'vitest';
import { triedFamilies } from '../../../core/coaching/tried-families.ts';
import type { ThrowView, TrialView } from '../../../core/facts/views.ts';

const trial = (letter: string, part: Partial<TrialView> = {}): TrialView => ({ letter, intent: 'changeup', grip: null, cue: null, count: 0, excluded: 0, seamEffect: { kind: 'too-few', count: 0, need: 5 }, ...part });
const thrown = (letter: string | null, size: number | null, verticalM: number, part: Partial<ThrowView> = {}): ThrowView =>
  ({ trial: letter, excluded: null, problem: null, miss: size === null ? null : { size }, separation: { verticalM, armSideM: 0.1 }, ...part }) as ThrowView;

describe('what was tried of a family', () => {
  it('is every trial that was begun as one, taken together: throws, mean miss and mean separation', () => {
    const trials = [trial('A', { family: 'turnover' }), trial('B', { family: 'seam-effect' }), trial('C', { family: 'turnover' })];
    const found = triedFamilies(trials, [thrown('A', 1, -0.2), thrown('A', 2, -0.1), thrown('B', 5, 0), thrown('C', 0, -0.3)], null);
    expect(found.map(({ family, throws }) => [family, throws])).toEqual([['turnover', 3], ['seam-effect', 1]]);
    expect(found[0]).toMatchObject({ meanMiss: 1, comfortable: null });
    expect(found[0]!.separation!.verticalM).toBeCloseTo(-0.2, 12);
  });

  it('is a split’s for every split, and nobody’s for a changeup of which no family was said', () => {
    expect(triedFamilies([trial('A', { intent: 'split' }), trial('B')], [thrown('A', 1, -0.2), thrown('B', 1, -0.2)], null).map(({ family }) => family)).toEqual(['split']);
  });

  it('leaves out excluded throws, misreads, and throws of no trial', () => {
    const bad = [thrown('A', 9, 1, { excluded: 'slipped' }), thrown('A', 9, 1, { problem: 'no flight' }), thrown(null, 9, 1)];
    expect(triedFamilies([trial('A', { family: 'turnover' })], bad, null)).toEqual([]);
    expect(triedFamilies([trial('A', { family: 'turnover' })], [...bad, thrown('A', 1, -0.2)], null)[0]).toMatchObject({ throws: 1, meanMiss: 1 });
  });

  it('has no mean miss without a zone, and the comfort of the trial that it was said of', () => {
    const trials = [trial('A', { family: 'turnover' }), trial('B', { family: 'split' })];
    const found = triedFamilies(trials, [thrown('A', null, -0.2), thrown('B', null, -0.2)], { trial: 'B', comfortable: false });
    expect(found).toMatchObject([{ family: 'turnover', meanMiss: null, comfortable: null }, { family: 'split', meanMiss: null, comfortable: false }]);
  });
});
