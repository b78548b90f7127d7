import { expect, test } from 'vitest';
import { comparisonsOf } from '../../../web/trials/comparison-of.ts';
import { chosenIn, chosenText, firstChoice, pairOf, touched } from '../../../web/trials/chosen.ts';
import { rowsOf } from '../../../web/trials/rows.ts';
import { evening, FAR, NEAR, opened, recordOf } from './recorded-athlete.ts';

const story = evening('s1', [['A', FAR], ['B', NEAR]]);
story.say({ kind: 'stage-set', session: 's1', stage: 'flat-ground', distanceM: 18, effort: 'firm' }).throw(80, 9, -9);
const record = recordOf(story.facts);
const rows = rowsOf(record.sessions[0]!);
const row = (key: string) => rows.find((one) => one.key === key)!;

test('a trial that was thrown in two stages stands twice, the newest first', () => {
  expect(rows.map(({ key, throws }) => [key, throws.length])).toEqual([['s1.B.flat-ground', 1], ['s1.B.mound', 5], ['s1.A.mound', 5]]);
});

test('two trials of one stage make a pair, the older first; a third takes the place of the one chosen first', () => {
  const both = touched(touched([], row('s1.B.mound')!, rows), row('s1.A.mound')!, rows);
  expect(both).toEqual(['s1.B.mound', 's1.A.mound']);
  expect(pairOf(both, rows)!.map(({ letter }) => letter)).toEqual(['A', 'B']);
  expect(touched(both, row('s1.B.mound')!, rows)).toEqual(['s1.A.mound']);
});

test('another stage begins the choice anew, for verdicts never cross stages', () => {
  expect(touched(['s1.A.mound', 's1.B.mound'], row('s1.B.flat-ground')!, rows)).toEqual(['s1.B.flat-ground']);
  expect(pairOf(['s1.B.flat-ground'], rows)).toBeNull();
});

test('a screen opens with what its link asks for, else with the newest comparison, else with the newest two of one session', () => {
  expect(firstChoice(chosenIn('?pair=s1.B.flat-ground~gone.A.mound'), rows, [])).toEqual(['s1.B.flat-ground']);
  const newest = comparisonsOf(recordOf(story.say(opened('s1', 1)).facts), '2026-09-21', null);
  expect(firstChoice([], rows, newest)).toEqual(['s1.A.mound', 's1.B.mound']);
  const mound = rows.filter(({ stage }) => stage === 'mound');
  expect(firstChoice([], mound, [])).toEqual(['s1.A.mound', 's1.B.mound']);
  expect(firstChoice([], mound.slice(0, 1), [])).toEqual([]);
});

test('a choice goes into an address and comes back', () => {
  expect(chosenIn(`?pair=${encodeURIComponent(chosenText(['s1.A.mound', 's1.B.mound'])!)}`)).toEqual(['s1.A.mound', 's1.B.mound']);
  expect(chosenText([])).toBeNull();
});
