import { expect, test } from 'vitest';
import { inchesToM, mphToMps } from '../../core/units/convert.ts';
import { sessionPlane } from '../../web/report/session-plane.ts';
import { armWords, baselineWords, excludedWords, noteWords, stageWords, targetWords, throwsWords, whenWords } from '../../web/report/report-words.ts';
import { armOn } from '../../web/trials/arm.ts';
import { zoneOffset } from '../../web/words/zone-offset.ts';
import { speechIn } from '../../web/words/speech.ts';
import { evening, FAR, NEAR, recordOf } from './trials/recorded-athlete.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const story = evening('s1', [['A', FAR], ['B', NEAR]]);
const last = story.facts.at(-1)!.place;
story.say({ kind: 'note-written', session: 's1', text: 'Loose wrist', place: last }).say({ kind: 'throws-excluded', session: 's1', places: [last], reason: 'slipped' }).say({ kind: 'session-closed', session: 's1' });
const record = recordOf(story.facts, { days: [{ mound: 'north-1', day: '2026-09-21', throws: [{ stage: 'mound', effort: 'full', count: 15 }] }] });
const [folded] = record.sessions;
const { shown, view } = folded!;

test('a session is dated in the bullpen’s own zone, with its distance from UTC', () => {
  // 1 790 000 001 s are 14:13:21 UTC on 21 September 2026, five hours ahead of Chicago's summer.
  expect(whenWords(shown, ENGLISH)).toBe('09:13 to 09:13, UTC−05:00 (America/Chicago)');
  expect(zoneOffset(Date.UTC(2026, 0, 5), 'America/Chicago')).toBe('−06:00');
  expect(zoneOffset(Date.UTC(2026, 0, 5), 'Asia/Kolkata')).toBe('+05:30');
  expect(zoneOffset(Date.UTC(2026, 0, 5), 'UTC')).toBe('+00:00');
});

test('what was thrown, from what fastball and at what target, each with its unit', () => {
  expect(stageWords(shown, view.throws, ENGLISH)).toBe('Mound, 60.5 ft, full');
  expect(throwsWords(view.throws, ENGLISH)).toBe('15 throws: 5 four-seam, 10 changeup');
  expect(throwsWords(view.throws, SPANISH)).toBe('15 tiros: 5 recta cuatro costuras, 10 cambio');
  expect(baselineWords(shown.baseline, shown.timeZone, ENGLISH)[0]).toMatch(/^90\.0 mph ± \d\.\d mph; induced 16\.0 in up, 6\.0 in arm side$/);
  expect(baselineWords({ kind: 'forming', have: 2, need: 5 }, shown.timeZone, ENGLISH)).toEqual(['2 of 5 fastballs']);
  const zone = { kind: 'ellipse', verticalM: inchesToM(-8), armSideM: inchesToM(4), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(2) } as const;
  expect(targetWords(zone, { lowMps: mphToMps(-11), highMps: mphToMps(-7) }, ENGLISH)).toEqual(['8 in down, 4 in arm side; 6 in high, 4 in wide', '7 to 11 mph slower']);
  expect(targetWords(null, null, ENGLISH)).toEqual(['none set']);
});

test('notes and excluded throws keep their words', () => {
  expect(noteWords(shown, view.throws, ENGLISH)).toEqual(['09:13 throw 15: Loose wrist']);
  expect(excludedWords(view, ENGLISH)).toEqual(['Throw 15, Changeup B: slipped']);
});

test('the arm’s count stands against the day’s most with its source, and nothing says that the arm is fine', () => {
  const said = armWords(armOn(record, '2026-09-21'), ENGLISH);
  expect(said[0]).toBe('15 of 120 throws from a mound on Sep 21, 2026, over all mounds.');
  expect(said.join(' ')).toContain('Guideline of the US baseball governing bodies (published, copy of 2015), ages 19 to 22.');
  expect(said.join(' ')).not.toMatch(/\b(fine|clear|ready|ok|safe)\b/i);
});

test('the plane of a session draws every throw of it alike, the fastballs as a cloud', () => {
  const { marks, plane } = sessionPlane(folded!, ENGLISH);
  expect(marks.map(({ letter }) => letter).join('')).toBe('AAAAABBBB');
  expect(plane.cloud).toHaveLength(5);
});
