import { describe, expect, test } from 'vitest';
import { armOn } from '../../../web/trials/arm.ts';
import { evening, NEAR, recordOf } from './recorded-athlete.ts';

/** The stories begin on 21 September 2026 in Chicago. */
const TODAY = '2026-09-21';
const thrown = (count: number) => ({ days: [{ mound: 'north-1', day: TODAY, throws: [{ stage: 'mound', effort: 'full', count } as const] }] });

describe('what is left of a bullpen, for what Trials says to throw next', () => {
  const story = () => evening('s1', [['A', NEAR]]);

  test('is held against thirty throws where nobody planned', () => {
    expect(armOn(recordOf(story().facts, thrown(12)), TODAY)).toMatchObject({ kind: 'under', left: 18 });
    expect(armOn(recordOf(story().facts, thrown(31)), TODAY)).toMatchObject({ left: 0 });
  });

  test('is held against the plan where there is one', () => {
    const planned = story().say({ kind: 'count-planned', session: 's1', throws: 45, dayMost: null });
    expect(armOn(recordOf(planned.facts, thrown(12)), TODAY)).toMatchObject({ left: 33 });
  });

  test('is never more than the day’s most leaves', () => {
    const planned = story().say({ kind: 'count-planned', session: 's1', throws: 45, dayMost: 20 });
    expect(armOn(recordOf(planned.facts, thrown(12)), TODAY)).toMatchObject({ left: 8 });
  });
});
