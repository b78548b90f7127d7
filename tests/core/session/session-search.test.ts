import { describe, expect, test } from 'vitest';
import { sessionQuestionSchema } from '../../../core/facts/session-search.ts';
import { findableSessions, searchSessions } from '../../../core/session/session-search.ts';
import { fiveFastballs, Story } from './story.ts';

const GRIP = { seams: 'two-seam', spread: 'wide', thumbDeg: 0, pressure: 'ring', depth: 'deep', tiltDeg: 0 } as const;
const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
const [first] = fiveFastballs(story);
story.say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: GRIP, cue: { words: 'Tirá la muñeca', focus: 'external' } })
  .say({ kind: 'trial-begun', session: 's1', intent: 'split', grip: null, cue: { words: 'Elbow high', focus: null }, family: 'split' })
  .say({ kind: 'note-written', session: 's1', text: 'Elbow dropped on the third', place: first! })
  .say({ kind: 'note-written', session: 's1', text: 'Rained at the end', place: null })
  .say({ kind: 'throw-bookmarked', session: 's1', place: first!, on: true })
  .say({ kind: 'session-closed', session: 's1' })
  .later(48).open('s2', 'Peña').say({ kind: 'stage-set', session: 's2', stage: 'flat-ground', distanceM: 18, effort: 'firm' });
story.throw(88, 15, -6);
const ALL = findableSessions(story.ledger());
const find = (question: object) => searchSessions(ALL, sessionQuestionSchema.parse(question));
const ids = (question: object): string[] => find(question).sessions.map(({ id }) => id);

describe('sessions are found', () => {
  test('all of them when nothing is asked, newest first, with what was written and marked', () => {
    expect(find({})).toMatchObject({ total: 2, sessions: [{ id: 's2', notes: 0, bookmarks: 0 }, { id: 's1', notes: 2, bookmarks: 1, trials: ['A', 'B'] }] });
  });

  test('by words of the name, whatever their case and accents', () => {
    expect(ids({ athlete: 'pena INV' })).toEqual(['s2']);
    expect(ids({ athlete: 'invented' })).toEqual(['s2', 's1']);
  });

  test('by days of their own time zone', () => {
    const { day } = ALL[1]!;
    expect(ids({ from: day, to: day })).toEqual(['s1']);
    expect(ids({ from: ALL[0]!.day })).toEqual(['s2']);
  });

  test('by the stage that was thrown in', () => {
    expect(ids({ stage: 'flat-ground' })).toEqual(['s2']);
    expect(ids({ stage: 'mound' })).toEqual(['s1']);
  });

  test('by the letter, grip, cue, intent or family of one trial', () => {
    expect(find({ trial: 'b' }).sessions[0]).toMatchObject({ id: 's1', trialsFound: ['B'] });
    expect(find({ trial: 'two-seam ring munec' }).sessions[0]).toMatchObject({ trialsFound: ['A'] });
    expect(find({ trial: 'split' }).sessions[0]).toMatchObject({ trialsFound: ['B'] });
    expect(ids({ trial: 'ring elbow' })).toEqual([]);
    expect(ids({ trial: 'c' })).toEqual([]);
  });

  test('by words of one note, which is given with its throw', () => {
    expect(find({ note: 'elbow THIRD' }).sessions).toMatchObject([{ id: 's1', notesFound: [{ text: 'Elbow dropped on the third', place: first }] }]);
    expect(ids({ note: 'elbow rained' })).toEqual([]);
  });

  test('page by page', () => {
    expect(find({ skip: '1', take: '1' })).toMatchObject({ total: 2, sessions: [{ id: 's1' }] });
    expect(find({ skip: 5 })).toMatchObject({ total: 2, sessions: [] });
  });

  test('or it is told what to ask less of', () => {
    expect(find({ athlete: 'ada', note: 'snow', stage: 'mound' })).toEqual({ total: 0, sessions: [], without: { athlete: 0, stage: 0, note: 1 } });
  });
});

test.each([[{ from: 'yesterday' }, 'from'], [{ stage: 'moon' }, 'stage'], [{ take: 5000 }, 'take'], [{ speed: '90' }, '']])('%o is no question', (question, path) => {
  const { success, error } = sessionQuestionSchema.safeParse(question);
  expect([success, error?.issues[0]?.path.join('.')]).toEqual([false, path]);
});
