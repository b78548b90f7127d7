import { expect, test } from 'vitest';
import { athleteSheet, sessionSheet } from '../../web/report/sheet.ts';
import { speechIn } from '../../web/words/speech.ts';
import { evening, FAR, NEAR, opened, recordOf } from './trials/recorded-athlete.ts';

const story = evening('s1', [['A', FAR], ['B', NEAR], ['A', FAR], ['B', NEAR]]);
const last = story.facts.at(-1)!.place;
story.say({ kind: 'note-written', session: 's1', text: 'Loose wrist', place: last }).say(opened('s1', 1)).say({ kind: 'throws-excluded', session: 's1', places: [last], reason: 'slipped' });
story.say({ kind: 'session-closed', session: 's1' });
const record = recordOf(evening('s2', [['A', NEAR]], story).facts, { days: [{ mound: 'north-1', day: '2026-09-21', throws: [{ stage: 'mound', effort: 'full', count: 25 }] }] });

test('a report in words says what the report on the screen says', () => {
  const { title, sections, foot } = sessionSheet(record, 's1', speechIn('en', 'imperial'))!;
  expect(title).toMatch(/^Report · .+ · Sep 21, 2026$/);
  expect(sections.map((section) => section.title)).toEqual(['Session report', 'Trials', 'Verdicts', 'Excluded throws', 'Notes', 'Arm care']);
  const [facts, trials, verdicts, excluded, notes] = sections;
  expect(facts!.lines).toContain('Throws: 25 throws: 5 four-seam, 20 changeup');
  expect(trials!.table.map(([first]) => first)).toEqual(['Trial', 'A, Changeup, Mound', 'B, Changeup, Mound']);
  expect(trials!.table[2]![2]).toMatch(/^9, 1 excluded$/);
  expect(verdicts!.lines).toHaveLength(1);
  expect(verdicts!.lines[0]).toMatch(/^1\. B against A: /);
  expect(excluded!.lines).toEqual(['Throw 25, Changeup B: slipped']);
  expect(notes!.lines[0]).toMatch(/ throw 25: Loose wrist$/);
  expect(foot[0]).toContain('not medical advice');
});

test('of an athlete it holds every session, newest first, in the language asked for', () => {
  const { sections } = athleteSheet(record, speechIn('es', 'metric'));
  expect(sections.slice(0, 2).map((section) => section.title.split(' · ')[1])).toEqual(['s2', 's1']);
  expect(sections[0]!.lines.join(' ')).toContain('Tiros: ');
  expect(sections.slice(2).map((section) => section.title)).toEqual(['Veredictos', 'Cuidado del brazo']);
});

test('of a session that the record does not hold there is none', () => {
  expect(sessionSheet(record, 'nowhere', speechIn('en', 'imperial'))).toBeNull();
});
