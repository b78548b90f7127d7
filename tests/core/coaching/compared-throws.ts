import type { ComparedThrow } from '../../../core/coaching/compared-throw.ts';
import type { ComparisonTerms } from '../../../core/coaching/comparison.ts';
import type { TargetZone } from '../../../core/facts/coach.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';

/** Three inches to each side; a miss of 1 is two inches. */
export const zone: TargetZone = { kind: 'ellipse', verticalM: inchesToM(-9), armSideM: inchesToM(5), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) };

/** A throw straight above the zone that misses by so much; a negative miss goes inside. */
export const missing = (trial: 'a' | 'b', miss: number, different: Partial<ComparedThrow> = {}): Omit<ComparedThrow, 'place'> => ({
  day: '2026-03-02',
  trial,
  excluded: false,
  verticalM: zone.verticalM + zone.verticalRadiusM + miss * inchesToM(2),
  armSideM: zone.armSideM,
  speedMps: mphToMps(-9),
  tiltRad: 2,
  ...different,
});

/** In the order thrown, places from 1. */
export const inOrder = (...blocks: readonly (readonly Omit<ComparedThrow, 'place'>[])[]): ComparedThrow[] =>
  blocks.flat().map((thrown, i) => ({ ...thrown, place: i + 1 }));

export const block = (trial: 'a' | 'b', misses: readonly number[], different: Partial<ComparedThrow> = {}): Omit<ComparedThrow, 'place'>[] =>
  misses.map((miss) => missing(trial, miss, different));

export const mayThrow = (left: number): NonNullable<ComparisonTerms['mayThrow']> => ({
  kind: 'under',
  day: '2026-03-02',
  today: [],
  moundThrows: 0,
  dayMost: 95,
  dayMostFrom: 'guideline',
  source: { version: 'invented', mark: 'published', age: 16, rowFromAge: 15, rowToAge: 16, house: [] },
  earliestNextDay: null,
  left,
});

export const terms = (different: Partial<ComparisonTerms> = {}): ComparisonTerms => ({ number: 1, zone, today: '2026-03-02', mayThrow: mayThrow(30), ...different });
