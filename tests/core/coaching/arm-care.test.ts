import { describe, expect, it } from 'vitest';
import { armCare, mayThrow, type ArmCareInput } from '../../../core/coaching/arm-care.ts';
import type { ArmReport, ThrowingDay } from '../../../core/facts/care-view.ts';
import type { Stage } from '../../../core/facts/vocabulary.ts';

const day = (date: string, count: number, stage: Stage = 'mound'): ThrowingDay => ({ day: date, throws: [{ stage, effort: 'full', count }] });
const report = (said: ArmReport['said'], date: string): ArmReport => ({ atMs: 1, day: date, from: 'glance', said, areas: ['elbow'] });
/** Born in 2011: 14 or 15 in 2026, so read as 14. */
const care = (days: readonly ThrowingDay[], more: Partial<ArmCareInput> = {}) =>
  armCare({ birthYear: 2011, today: '2026-04-30', days, pain: null, soreness: null, ownDayMost: null, planned: null, ...more });

describe('today’s throws', () => {
  it('are counted by stage and effort, and those from a mound are held against the day’s most of the younger age', () => {
    const found = care([day('2026-04-30', 20), day('2026-04-30', 9, 'hitters'), day('2026-04-30', 40, 'catch-play'), day('2026-04-30', 3)]);
    expect(found).toMatchObject({ kind: 'under', moundThrows: 32, dayMost: 95, left: 63 });
    expect(found.today).toEqual([
      { stage: 'catch-play', effort: 'full', count: 40 },
      { stage: 'mound', effort: 'full', count: 23 },
      { stage: 'hitters', effort: 'full', count: 9 },
    ]);
    expect(found.source).toEqual({ version: 'copy-of-2015', mark: 'published', age: 14, rowFromAge: 13, rowToAge: 14, house: ['practice-counted'] });
  });

  it.each([[71, 'under'], [72, 'near'], [94, 'near'], [95, 'reached'], [130, 'reached']])('%i of 95 is %s', (count, kind) => {
    expect(care([day('2026-04-30', count)]).kind).toBe(kind);
  });

  it('are warned of earlier under a stricter rule of the league, and never later under a laxer one', () => {
    expect(care([day('2026-04-30', 45)], { ownDayMost: 60 })).toMatchObject({ kind: 'near', dayMost: 60, dayMostFrom: 'own-rule', left: 15 });
    expect(care([day('2026-04-30', 45)], { ownDayMost: 200 })).toMatchObject({ kind: 'under', dayMost: 95, dayMostFrom: 'guideline' });
  });

  it('leave no more than the planned bullpen has left', () => {
    expect(care([day('2026-04-30', 20)], { planned: 30 })).toMatchObject({ kind: 'under', left: 10 });
    expect(care([day('2026-04-30', 40)], { planned: 30 })).toMatchObject({ kind: 'under', left: 0 });
  });
});

describe('the earliest next day', () => {
  it.each([[20, '2026-05-01'], [21, '2026-05-02'], [36, '2026-05-03'], [51, '2026-05-04'], [66, '2026-05-05']])(
    'after %i from the mound on 30 April is %s', (count, next) => {
      expect(care([day('2026-04-30', count)])).toMatchObject({ earliestNextDay: { day: next, reasons: ['rest-days'] } });
    });

  it('is not asked for by catch play, long toss or flat ground', () => {
    expect(care([day('2026-04-30', 80, 'long-toss'), day('2026-04-30', 80, 'flat-ground')])).toMatchObject({ kind: 'under', moundThrows: 0, earliestNextDay: null });
  });

  it('keeps a pitcher from a third day running, even after few throws', () => {
    expect(care([day('2026-04-29', 10), day('2026-04-30', 10)])).toMatchObject({ kind: 'under', earliestNextDay: { day: '2026-05-02', reasons: ['third-day-running'] } });
    expect(care([day('2026-04-28', 10), day('2026-04-29', 10)])).toMatchObject({ kind: 'rest-due', until: { day: '2026-05-01', reasons: ['third-day-running'] } });
  });

  it('has not come while an earlier day still asks for rest', () => {
    expect(care([day('2026-04-27', 66)])).toMatchObject({ kind: 'rest-due', until: { day: '2026-05-02', reasons: ['rest-days'] } });
    expect(care([day('2026-04-25', 66)]).kind).toBe('under');
  });

  it('crosses a month and a leap day: 50 thrown at 16 on 28 February ask for two days', () => {
    expect(care([day('2028-02-28', 50)], { today: '2028-02-28' })).toMatchObject({ earliestNextDay: { day: '2028-03-02' } });
  });

  it('adds what one day held on two mounds', () => {
    expect(care([day('2026-04-29', 20), day('2026-04-29', 20)])).toMatchObject({ kind: 'rest-due', until: { day: '2026-05-02' } });
  });

  it('is not moved by a day that has not come', () => {
    expect(care([day('2026-05-01', 80)])).toMatchObject({ kind: 'under', earliestNextDay: null });
  });
});

describe('a report about the arm', () => {
  it('of pain comes before every count, on whatever day it was said, and leaves nothing to advise with', () => {
    const found = care([day('2026-04-30', 10)], { pain: report('pain', '2026-04-02'), soreness: report('sore', '2026-04-30') });
    expect(found).toMatchObject({ kind: 'pain-reported', report: { said: 'pain', areas: ['elbow'] }, moundThrows: 10 });
    expect(found).not.toHaveProperty('left');
    expect(found).not.toHaveProperty('earliestNextDay');
    expect(mayThrow(found)).toBe(false);
  });

  it('of soreness stops advice for its own day', () => {
    expect(care([], { soreness: report('sore', '2026-04-30') }).kind).toBe('soreness-reported');
    expect(care([], { soreness: report('sore', '2026-04-29') }).kind).toBe('under');
  });

  it('or a full count leaves no number of throws to show', () => {
    for (const stopped of [care([day('2026-04-30', 95)]), care([day('2026-04-27', 66)]), care([], { soreness: report('sore', '2026-04-30') })]) {
      expect(stopped).not.toHaveProperty('left');
      expect(mayThrow(stopped)).toBe(false);
    }
  });
});
