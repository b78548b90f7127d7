import { describe, expect, test } from 'vitest';
import { mayThrow } from '../../../core/coaching/arm-care.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { armOn, todayOf } from '../../../web/trials/arm.ts';
import { comparisonsOf } from '../../../web/trials/comparison-of.ts';
import { differenceData } from '../../../web/trials/difference-data.ts';
import { measureWords } from '../../../web/trials/measure-words.ts';
import { entryNames } from '../../../web/trials/names.ts';
import { nextWords } from '../../../web/trials/next-words.ts';
import { missMeanWords, onTargetWords, spreadWords } from '../../../web/trials/row-words.ts';
import { rowsOf } from '../../../web/trials/rows.ts';
import { becauseWords, cautionWords, dayWords, excludedWords, verdictWords } from '../../../web/trials/verdict-words.ts';
import { speechIn } from '../../../web/words/speech.ts';
import { daysLater, evening, FAR, NEAR, opened, recordOf } from './recorded-athlete.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const REPORT = { atMs: 1_790_000_000_000, from: 'glance', said: 'pain', areas: ['elbow'] } as const;

function comparedIn(record: ReturnType<typeof recordOf>, days: Parameters<typeof recordOf>[1] = {}) {
  const held = { ...record, days: { ...record.days, ...days } };
  const care = armOn(held, todayOf(held, held.sessions[0]!.view.atMs));
  const [found] = comparisonsOf(held, care.day, mayThrow(care) ? care : null);
  return { found: found!, care, names: entryNames(found!.entry) };
}

describe('a settled comparison', () => {
  const { found, care, names } = comparedIn(recordOf(evening('s1', [['A', FAR], ['B', NEAR], ['A', FAR], ['B', NEAR]]).say(opened('s1', 1)).facts));

  test('is said in a few words, with its interval in the unit of a length, and with care', () => {
    expect(verdictWords(found.compared.verdict, names, ENGLISH)).toBe('B is better than A');
    expect(verdictWords(found.compared.verdict, names, SPANISH)).toBe('B es mejor que A');
    const said = becauseWords(found.compared, found.taken, names, true, ENGLISH);
    // Far throws miss by 5.44 − 3 = 2.44 in; near ones lie 0.6 in from the middle on average, 2.4 in inside the edge.
    expect(said[0]).toMatch(/^B misses by 4\.8 in less than A; these throws leave room for \d\.\d in to \d\.\d in less\.$/);
    expect(said).toContain('The whole interval lies beyond the smallest difference that matters: it matters.');
    // 10 and 10 throws weigh as 5; the prior as 1: 4.84 · 5/6.
    expect(said.at(-1)).toBe('A first difference looks larger than it is. Said with care: 4.0 in less.');
    expect(becauseWords(found.compared, found.taken, names, true, SPANISH)[0]).toMatch(/^B falla por 12\.\d cm menos que A/);
  });

  test('is drawn against zero and against what does not matter', () => {
    const drawn = differenceData(found.compared, names, ENGLISH)!;
    expect(drawn.high).toBeLessThan(-drawn.smallest);
    expect(drawn.smallest).toBeCloseTo(2, 9);
    expect(Math.abs(drawn.shrunken)).toBeLessThan(Math.abs(drawn.difference));
  });

  test('asks for no more today, but for a set without feedback before it counts as learned', () => {
    const said = nextWords(found.compared, found.taken, care, names, ENGLISH);
    expect(said).toEqual(['This comparison is settled. More throws make it surer.', expect.stringMatching(/^Practice is not learning: .* without feedback on another day/)]);
  });
});

describe('a comparison that is not settled', () => {
  const story = evening('s1', [['A', [1, 5, 3, 6, 0]], ['B', [2, 4, 0.5, 5.5, 1]]]).say(opened('s1', 1));
  const numbers = /\d/;

  test('says how many more it takes, whether that fits, and which block comes next', () => {
    const { found, care, names } = comparedIn(recordOf(story.facts));
    const said = nextWords(found.compared, found.taken, care, names, ENGLISH);
    expect(said[0]).toMatch(/^About \d+ more of each would settle it, if it goes on like this\.$/);
    expect(said).toContain('Cannot be settled today: 30 throws are left. Carry on next time.');
    expect(said.at(-1)).toBe('Next 5 of A, then 5 of B.');
  });

  test('says that grip and time are mixed, and how to part them', () => {
    const { found, names } = comparedIn(recordOf(story.facts));
    expect(cautionWords(found.compared, found.taken, names, true, ENGLISH)[0]).toBe('Grip and time are mixed: all of one came before all of the other. Throw A and B in alternating blocks of five.');
  });

  test('after pain says no number of throws and advises none', () => {
    const { found, care, names } = comparedIn(recordOf(story.facts), { pain: { mound: 'south-2', report: { ...REPORT, areas: ['elbow'], day: '2026-09-21' } } });
    expect(nextWords(found.compared, found.taken, care, names, ENGLISH)).toEqual([expect.stringContaining('see a licensed medical professional')]);
    expect(cautionWords(found.compared, found.taken, names, mayThrow(care), ENGLISH).join(' ')).not.toMatch(/Throw A|five/);
    expect(becauseWords(found.compared, found.taken, names, mayThrow(care), ENGLISH).join(' ')).not.toMatch(/forty|five/);
    expect(nextWords(found.compared, found.taken, care, names, SPANISH).join(' ')).not.toMatch(numbers);
  });

  test('at the day’s most asks for no more', () => {
    const thrown = { mound: 'north-1', day: '2026-09-21', throws: [{ stage: 'mound', effort: 'full', count: 120 }] } as const;
    const { found, care, names } = comparedIn(recordOf(story.facts), { days: [thrown] });
    expect(care.kind).toBe('reached');
    expect(nextWords(found.compared, found.taken, care, names, ENGLISH)).toEqual(['The day’s most is reached: no throws are suggested today.']);
  });
});

test('too few throws say how many there are, and a verdict that an excluded throw changes is said twice', () => {
  const few = comparedIn(recordOf(evening('s1', [['A', FAR], ['B', NEAR.slice(0, 3)]]).say(opened('s1', 1)).facts));
  expect(becauseWords(few.found.compared, few.found.taken, few.names, true, ENGLISH)).toEqual(['A has 5, B has 3.', 'It takes five of each, thrown on the same days.']);
  expect(differenceData(few.found.compared, few.names, ENGLISH)).toBeNull();

  const story = evening('s1', [['A', [1, 1.4, 0.6, 1.2, 0.8]], ['B', [5, 5.4, 4.6, 5.2, 4.8, -22]]]);
  story.say({ kind: 'throws-excluded', session: 's1', places: [story.facts.at(-1)!.place], reason: 'slipped' }).say(opened('s1', 1));
  const both = comparedIn(recordOf(story.facts));
  expect(excludedWords(both.found.compared, both.found.taken, both.names, ENGLISH)).toEqual({
    throws: ['throw 16 (B): slipped'], verdicts: ['Without them: B is worse than A.', 'With them: Not settled.'],
  });
});

test('a spread that changed is said with the trial that scatters more, whichever it is', () => {
  const wide = [1, 5, 3, 6, 0];
  const said = (a: readonly number[], b: readonly number[]) => {
    const { found, names } = comparedIn(recordOf(evening('s1', [['A', a], ['B', b]]).say(opened('s1', 1)).facts));
    return [ENGLISH, SPANISH].map((speech) => cautionWords(found.compared, found.taken, names, true, speech).find((sentence) => sentence.includes('times') || sentence.includes('veces')));
  };
  expect(said(NEAR, wide)[0]).toMatch(/^The spread changed: B scatters \d\.\d times as much as A, so/);
  expect(said(wide, NEAR)[0]).toMatch(/^The spread changed: A scatters \d\.\d times as much as B, so/);
  expect(said(wide, NEAR)[1]).toMatch(/^La dispersión cambió: A se dispersa \d\.\d veces lo que B, /);
});

test('days that disagree are told apart, each with its difference', () => {
  const first = evening('s1', [['A', FAR], ['B', NEAR]]).say({ kind: 'session-closed', session: 's1' });
  const from = first.facts.length + 1;
  const story = evening('s2', [['A', NEAR], ['B', FAR]], first).say(opened('s2', 1, { baseline: 2 })).say({ kind: 'comparison-continued', session: 's2', k: 1, day: { session: 's1', a: 'A', b: 'B', baseline: 1 } });
  const { found, names } = comparedIn(recordOf(daysLater(story.facts, from, 3)));
  expect(dayWords(found.compared, names, ENGLISH)).toEqual(['Sep 21, 2026: 4.8 in less (5 of A, 5 of B)', 'Sep 24, 2026: 4.8 in more (5 of A, 5 of B)']);
  expect(cautionWords(found.compared, found.taken, names, true, ENGLISH)).toContain('The signs differ: better on one day, worse on another.');
});

test('a single measure says its direction and its interval, never better or worse', () => {
  const said = measureWords({
    verticalM: { kind: 'interval', difference: inchesToM(-4.2), low: inchesToM(-6), high: inchesToM(-2.4) },
    armSideM: { kind: 'interval', difference: inchesToM(0.01), low: inchesToM(-1.9), high: inchesToM(1.8) },
    speedMps: { kind: 'missing', why: 'not-sent' },
    tiltRad: { kind: 'interval', difference: Math.PI / 12, low: -Math.PI / 24, high: Math.PI / 6 },
  }, ENGLISH);
  expect(said.map(({ difference, interval }) => [difference, interval])).toEqual([
    ['4.2 in more drop', '2.4 in to 6.0 in more drop'],
    ['no difference', '1.9 in to glove side to 1.8 in to arm side'],
    ['not sent', null],
    ['30 min clockwise', '15 min counterclockwise to 60 min clockwise'],
  ]);
  const slower = measureWords({ verticalM: { kind: 'too-few' }, armSideM: { kind: 'too-few' }, tiltRad: { kind: 'too-scattered' }, speedMps: { kind: 'interval', difference: mphToMps(-1), low: mphToMps(-2), high: mphToMps(0.5) } }, ENGLISH);
  expect(slower.map(({ difference }) => difference)).toEqual(['no interval yet', 'no interval yet', '1.0 mph slower', 'axis too scattered']);
});

test('a row leaves excluded throws out of its numbers and counts them apart', () => {
  const story = evening('s1', [['A', [...FAR, 0]]]);
  const record = recordOf(story.say({ kind: 'throws-excluded', session: 's1', places: [story.facts.at(-1)!.place], reason: 'slipped' }).facts);
  const [row] = rowsOf(record.sessions[0]!);
  expect(row).toMatchObject({ letter: 'A', stage: 'mound', excluded: 1, throws: { length: 6 } });
  expect(onTargetWords(row!.all.onTarget, ENGLISH)).toBe('0 of 5 (0 to 43 %)');
  // The far throws lie 5.44 in above the middle on average, 3 in of them inside the zone.
  expect(missMeanWords(row!.all.meanMiss, ENGLISH)).toMatch(/^2\.4 in \(\d\.\d to \d\.\d\)$/);
  expect(spreadWords(row!.all.spread, ENGLISH)).toBe('5 of 6 throws');
});

test('two trials on opposite sides of the zone are said to straddle it, for the miss sees no shift across', () => {
  const { found, names } = comparedIn(recordOf(evening('s1', [['A', [3.9, 4.2, 4.4, 3.8, 4.1]], ['B', [-4.1, -3.9, -4.3, -4, -3.8]]]).say(opened('s1', 1)).facts));
  expect(cautionWords(found.compared, found.taken, names, false, ENGLISH)).toContain('The zone lies between the two: both straddle it, and the miss does not see a shift across it.');
  expect(cautionWords(found.compared, found.taken, names, false, SPANISH).join(' ')).toContain('La zona queda entre los dos');
});
