import { describe, expect, test } from 'vitest';
import { missOf } from '../../../core/coaching/target.ts';
import { verdictOf, comparisonAlpha } from '../../../core/coaching/verdict.ts';
import { tallyOf } from '../../../core/statistics/tally.ts';
import { inchesToM } from '../../../core/units/convert.ts';
import { comparisonsOf } from '../../../web/trials/comparison-of.ts';
import { statementToAdd } from '../../../web/trials/opening.ts';
import { rowsOf } from '../../../web/trials/rows.ts';
import { sideBySide } from '../../../web/trials/side-by-side.ts';
import { speechIn } from '../../../web/words/speech.ts';
import { mayThrow } from '../../core/coaching/compared-throws.ts';
import { ZONE } from '../../core/session/story.ts';
import { daysLater, evening, FAR, NEAR, opened, recordOf } from './recorded-athlete.ts';

const ENGLISH = speechIn('en', 'imperial');
const TODAY = '2026-09-21';
const BLOCKS = [['A', FAR], ['B', NEAR], ['A', FAR], ['B', NEAR]] as const;

const beside = (record: ReturnType<typeof recordOf>, session = record.sessions[0]!.entry.id) => {
  const [b, a] = rowsOf(record.sessions.find(({ entry }) => entry.id === session)!);
  return sideBySide(record, a!, b!, comparisonsOf(record, TODAY, mayThrow(30)), ENGLISH);
};

describe('two trials that were thrown in blocks on one day', () => {
  test('have no verdict before their comparison is a fact, and may be opened under number 1', () => {
    expect(beside(recordOf(evening('s1', BLOCKS).facts))).toMatchObject({
      comparison: null, nextK: 1,
      toOpen: [{ mound: 'north-1', session: 's1', says: { kind: 'comparison-opened', k: 1, a: 'A', b: 'B', baseline: 1, zone: ZONE, stage: 'mound' } }],
    });
  });

  test('get the verdict that the rule gives for their misses', () => {
    const { comparison } = beside(recordOf(evening('s1', BLOCKS).say(opened('s1', 1)).facts));
    const miss = (up: number): number => missOf({ verticalM: ZONE.verticalM + inchesToM(up), armSideM: ZONE.armSideM }, ZONE).size;
    const byHand = verdictOf([{ a: tallyOf([...FAR, ...FAR].map(miss)), b: tallyOf([...NEAR, ...NEAR].map(miss)) }], { alpha: comparisonAlpha(1), smallest: 1 });
    expect(byHand).toMatchObject({ kind: 'better', matters: true });
    expect(comparison!.compared.verdict.kind).toBe(byHand.kind);
    const [said, expected] = [comparison!.compared.verdict, byHand].map((one) => (one.kind === 'too-few' ? Number.NaN : one.difference));
    expect(said).toBeCloseTo(expected!, 6);
    expect(comparison!.compared.gripAndTimeMixed).toBe(false);
  });

  test('keep zone and baseline of the day they were opened, and are offered the next number when either has moved', () => {
    const moved = { ...ZONE, verticalM: inchesToM(-2) };
    const story = evening('s1', BLOCKS).say(opened('s1', 1));
    const before = beside(recordOf(story.facts)).comparison!.compared.verdict;
    expect(beside(recordOf(story.facts)).moved).toBeNull();
    story.say({ kind: 'zone-set', session: 's1', zone: moved, speedBand: null, reason: 'dragged' });
    const after = beside(recordOf(story.facts));
    expect(after).toMatchObject({ moved: 'zone', nextK: 2, toOpen: [{ says: { k: 2, zone: moved } }] });
    expect(after.comparison!.compared.verdict).toEqual(before);
    const renewed = evening('s1', BLOCKS).say(opened('s1', 1)).say({ kind: 'baseline-renewed', session: 's1', stage: 'mound' });
    expect(beside(recordOf(renewed.facts))).toMatchObject({ moved: 'baseline', toOpen: [{ says: { k: 2, baseline: 2 } }] });
  });

  test('show the newest of their comparisons', () => {
    const story = evening('s1', BLOCKS).say(opened('s1', 1)).say(opened('s1', 2));
    expect(beside(recordOf(story.facts)).comparison!.entry.k).toBe(2);
  });

  test('opened the other way round stay so: A is then held against B', () => {
    const { comparison, names, first, second } = beside(recordOf(evening('s1', BLOCKS).say(opened('s1', 1, { a: 'B', b: 'A' })).facts));
    expect([names, first.letter, second.letter]).toEqual([{ a: 'B', b: 'A' }, 'B', 'A']);
    expect(comparison!.compared.verdict.kind).toBe('worse');
  });
});

describe('excluded throws', () => {
  const story = evening('s1', [['A', [1, 1.4, 0.6, 1.2, 0.8]], ['B', [5, 5.4, 4.6, 5.2, 4.8, -22]]]);
  const wild = story.facts.at(-1)!.place;

  test('leave the verdict, and both verdicts are known where they differ', () => {
    const { comparison } = beside(recordOf(story.say({ kind: 'throws-excluded', session: 's1', places: [wild], reason: 'slipped on the rubber' }).say(opened('s1', 1)).facts));
    expect(comparison!.compared.verdict.kind).toBe('worse');
    expect(comparison!.compared.withExcluded?.kind).toBe('not-settled');
    expect(comparison!.taken.filter(({ excluded }) => excluded)).toMatchObject([{ trial: 'b', because: 'slipped on the rubber', number: 16 }]);
  });
});

describe('the same two trials on two days', () => {
  const first = evening('s1', BLOCKS).say({ kind: 'session-closed', session: 's1' });
  const from = first.facts.length + 1;
  const story = evening('s2', BLOCKS, first);

  test('are one comparison: opening it takes in every day that holds both, each with its own baseline', () => {
    const { toOpen } = beside(recordOf(daysLater(story.facts, from, 2)));
    expect(toOpen).toMatchObject([
      { session: 's2', says: { kind: 'comparison-opened', baseline: 2 } },
      { session: 's2', says: { kind: 'comparison-continued', k: 1, day: { session: 's1', a: 'A', b: 'B', baseline: 1 } } },
    ]);
  });

  test('are pooled with the day as a block, from whichever day they are looked at', () => {
    story.say(opened('s2', 1, { baseline: 2 })).say({ kind: 'comparison-continued', session: 's2', k: 1, day: { session: 's1', a: 'A', b: 'B', baseline: 1 } });
    const record = recordOf(daysLater(story.facts, from, 2));
    for (const session of ['s1', 's2']) {
      const { comparison, daysToAdd } = beside(record, session);
      expect(comparison!.compared.days.map(({ countA, countB }) => [countA, countB])).toEqual([[10, 10], [10, 10]]);
      expect(daysToAdd).toEqual([]);
    }
  });

  test('can be taken into a comparison that was opened earlier', () => {
    const early = evening('s1', BLOCKS).say(opened('s1', 1)).say({ kind: 'session-closed', session: 's1' });
    const later = early.facts.length + 1;
    const { daysToAdd, comparison } = beside(recordOf(daysLater(evening('s2', BLOCKS, early).facts, later, 1)));
    expect(daysToAdd.map((day) => statementToAdd({ mound: 'north-1', openedIn: comparison!.openedIn, k: 1 }, day, 'mound'))).toMatchObject([
      [{ session: 's1', says: { kind: 'comparison-continued', session: 's1', k: 1, day: { session: 's2', a: 'A', b: 'B', baseline: 2 } } }],
    ]);
  });
});

describe('two trials that cannot be compared', () => {
  const two = evening('s1', [['A', FAR]]).say({ kind: 'session-closed', session: 's1' });
  const record = recordOf(evening('s2', [['B', NEAR]], two).facts);
  const [b] = rowsOf(record.sessions[0]!);
  const [a] = rowsOf(record.sessions[1]!);

  test('are told why: never on one day, or nothing to tell apart', () => {
    expect(sideBySide(record, a!, b!, [], ENGLISH)).toMatchObject({ comparison: null, toOpen: 'no-day', clouds: { marks: { length: FAR.length + NEAR.length } } });
    const again = evening('s1', [['A', FAR]]).say({ kind: 'session-closed', session: 's1' });
    const same = recordOf(evening('s2', [['A', NEAR]], again).facts);
    expect(sideBySide(same, rowsOf(same.sessions[1]!)[0]!, rowsOf(same.sessions[0]!)[0]!, [], ENGLISH).toOpen).toBe('same-work');
  });
});
