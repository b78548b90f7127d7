import { describe, expect, test } from 'vitest';
import type { ArmReport } from '../../../core/facts/care-view.ts';
import type { AthleteDays, MoundDay } from '../../../core/facts/wire.ts';
import { armState } from '../../../web/bench/arm/arm-state.ts';
import { careGrounds, careWarnings, nextDayWords } from '../../../web/bench/arm/care-words.ts';
import { plannedCount } from '../../../web/bench/arm/planned-count.ts';
import { blockOffer } from '../../../web/bench/trial/block-offer.ts';
import { speechIn } from '../../../web/words/speech.ts';
import { FASTBALLS, InventedMound, RIGHT_HANDER, TRIAL_A, TRIAL_B } from '../invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const session = `${RIGHT_HANDER.id}-today`;
/** 1.79e12 ms after 1970 is 21 September 2026, 08:53 in Chicago. */
const TODAY = '2026-09-21';
const TIRED_DAYS: MoundDay[] = [{ mound: 'south-2', day: '2026-09-20', throws: [{ stage: 'mound', effort: 'full', count: 40 }] }];

/** Five fastballs of a man of 22 at the most, whose day's most is 120, and a coach who may say more. */
const five = (): InventedMound => new InventedMound().open(RIGHT_HANDER).say({ kind: 'intent-set', session, intent: 'four-seam' }).throws(...FASTBALLS);
const sessionOf = (mound: InventedMound) => mound.view().session!;
const today = (mound: string, count: number): MoundDay => ({ mound, day: TODAY, throws: [{ stage: 'mound', effort: 'full', count }] });
const known = (days: readonly MoundDay[], more: Partial<AthleteDays> = {}): AthleteDays => ({ athlete: RIGHT_HANDER.id, days, pain: null, soreness: null, ...more });
const report = (said: ArmReport['said']): ArmReport => ({ atMs: 1, day: TODAY, from: 'glance', said, areas: ['elbow'] });

describe('the arm as Bench knows it', () => {
  test('is what this mound has counted until the server has answered for all mounds', () => {
    const state = armState(sessionOf(five()), 'north-1', null);
    expect(state).toMatchObject({ mounds: null, pain: null, care: { kind: 'under', day: TODAY, moundThrows: 5 } });
    expect(careGrounds(state, ENGLISH)[0]).toBe('Counted: this mound only, until the server has answered for all mounds.');
  });

  test('adds up the throws of all mounds', () => {
    const state = armState(sessionOf(five()), 'north-1', known([today('north-1', 5), today('south-2', 70)]));
    expect(state).toMatchObject({ mounds: ['north-1', 'south-2'], care: { kind: 'under', moundThrows: 75, left: 45 } });
    expect(careGrounds(state, ENGLISH)[0]).toContain('north-1, south-2');
  });

  test('warns at three quarters of the day’s most, and at all of it', () => {
    const words = (count: number) => careWarnings(armState(sessionOf(five()), 'north-1', known([today('north-1', count)])), sessionOf(five()), ENGLISH);
    expect(words(89)).toEqual([]);
    expect(words(90)).toEqual(['Three quarters of the day’s most are thrown.']);
    expect(words(119)).toEqual(['Three quarters of the day’s most are thrown.']);
    expect(words(120)).toEqual(['The day’s most is thrown: no more from the mound today.']);
  });

  test('asks for rest after what was thrown at another mound yesterday', () => {
    const state = armState(sessionOf(five()), 'north-1', known([...TIRED_DAYS, today('north-1', 5)]));
    expect(careWarnings(state, sessionOf(five()), ENGLISH)).toEqual(['Rest is due: no mound before Sep 22, 2026 (rest days of the table).']);
  });

  test('says the earliest next day only where today’s throws ask for rest, and never that an arm may throw', () => {
    const next = (count: number) => nextDayWords(armState(sessionOf(five()), 'north-1', known([today('north-1', count)])), ENGLISH);
    expect(next(30)).toEqual({ rest: false, said: 'After today’s throws the table asks for no day of rest. That clears nobody.' });
    expect(next(46)).toEqual({ rest: true, said: 'After today’s throws: no mound before Sep 24, 2026 (rest days of the table).' });
    expect(nextDayWords(armState(sessionOf(five()), 'north-1', known([])), ENGLISH)).toBeNull();
  });

  test('has pain as soon as the view has it, and no longer, whatever the server answered before', () => {
    const hurt = five().say({ kind: 'arm-reported', session, from: 'glance', said: 'pain', areas: [] });
    expect(armState(sessionOf(hurt), 'north-1', known([]))).toMatchObject({ pain: { said: 'pain' }, care: { kind: 'pain-reported' } });
    const answered = hurt.say({ kind: 'pain-answered', session, answer: 'reported-by-mistake', words: 'wrong button' });
    expect(armState(sessionOf(answered), 'north-1', known([], { pain: { mound: 'north-1', report: report('pain') } }))).toMatchObject({ pain: null, care: { kind: 'under' } });
  });

  test('names the row that is read, its source, and each house rule as one', () => {
    const state = armState(sessionOf(five()), 'north-1', known([today('north-1', 5)]));
    expect(careGrounds(state, ENGLISH).slice(1)).toEqual([
      'Guideline of the US baseball governing bodies (published, copy of 2015), ages 19–22: 120 a day at most. Read for age 21, the younger that the birth year allows.',
      'House rule: the table is for games; here practice counts as well, and the mound total is held against it.',
    ]);
    expect(careGrounds(state, SPANISH)[2]).toContain('Regla de la casa');
  });
});

describe('what a coach types as the count of a day', () => {
  test('is a whole number of throws, or nothing', () => {
    expect(['30', ' 1 ', '200', ''].map(plannedCount)).toEqual([{ kind: 'count', count: 30 }, { kind: 'count', count: 1 }, { kind: 'count', count: 200 }, { kind: 'count', count: null }]);
    for (const text of ['0', '201', '12.5', 'many', '-3']) expect(plannedCount(text)).toEqual({ kind: 'wrong' });
  });
});

describe('the next block', () => {
  const begun = { kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: null } as const;
  const offer = (mound: InventedMound) => {
    const view = mound.view();
    return blockOffer(view, view.session!, view.session!.armCare);
  };

  test('is offered once two trials take turns', () => {
    expect(offer(five().say(begun).throws(...TRIAL_A))).toBeNull();
    expect(offer(five().say(begun).throws(...TRIAL_A).say(begun))).toEqual({ pair: ['A', 'B'], next: { trial: 'B', throws: 5, goesOn: false }, gripAndTimeMixed: false });
  });

  test('counts down within a block and goes back after five, and says that grip and time are mixed until then', () => {
    const mound = five().say(begun).throws(...TRIAL_A).say(begun).throws(...TRIAL_B.slice(0, 3));
    expect(offer(mound)).toMatchObject({ next: { trial: 'B', throws: 2, goesOn: true }, gripAndTimeMixed: true });
    expect(offer(mound.throws(...TRIAL_B.slice(3, 5)))).toMatchObject({ next: { trial: 'A', throws: 5, goesOn: false } });
    expect(offer(mound.say({ kind: 'trial-resumed', session, trial: 'A' }).throws(TRIAL_A[0]!))).toMatchObject({ next: { trial: 'A', throws: 4 }, gripAndTimeMixed: false });
  });

  test('is not offered while pain stands', () => {
    expect(offer(five().say(begun).throws(...TRIAL_A).say(begun).say({ kind: 'arm-reported', session, from: 'glance', said: 'numb', areas: [] }))).toMatchObject({ pair: ['A', 'B'], next: null });
  });

  test('is between the trial that is on and the last other one', () => {
    const third = five().say(begun).throws(...TRIAL_A).say(begun).throws(...TRIAL_B.slice(0, 5)).say(begun);
    expect(offer(third)).toMatchObject({ pair: ['B', 'C'], next: { trial: 'C', throws: 5 } });
  });
});
