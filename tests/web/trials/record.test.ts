import { expect, test } from 'vitest';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { sessionRecord } from '../../../core/session/session-record.ts';
import { comparisonsOf } from '../../../web/trials/comparison-of.ts';
import { foldedSession, sessionsLacking, withSessions, type AthleteRecord } from '../../../web/trials/record.ts';
import { daysLater, evening, FAR, NEAR, opened, recordOf } from './recorded-athlete.ts';

const BLOCKS = [['A', FAR], ['B', NEAR]] as const;
const TODAY = '2026-09-21';

test('a comparison that takes in a day whose throws were not sent asks for them, and then counts them', () => {
  const first = evening('s1', BLOCKS).say({ kind: 'session-closed', session: 's1' });
  const story = evening('s2', BLOCKS, first);
  const days = { athlete: 'ada', days: [], pain: null, soreness: null };
  const lean = story.ledger();
  const record: AthleteRecord = { ...recordOf(story.facts), sessions: ['s2', 's1'].map((id) => foldedSession(sessionRecord(lean, id, false)!)!) };
  story.say(opened('s2', 1, { baseline: 2 })).say({ kind: 'comparison-continued', session: 's2', k: 1, day: { session: 's1', a: 'A', b: 'B', baseline: 1 } });
  const facts = daysLater(story.facts, story.facts.findIndex(({ said }) => said.kind === 'session-opened' && said.session === 's2') + 1, 1);
  const ledger = facts.reduce(foldFact, emptyLedger('north-1'));
  const grown = sessionRecord(ledger, 's2')!;
  expect(sessionsLacking(record, grown)).toEqual(['s1']);
  const whole = withSessions(record, [sessionRecord(ledger, 's1')!, grown], days);
  expect(sessionsLacking(whole, grown)).toEqual([]);
  expect(comparisonsOf(whole, TODAY, null)[0]!.taken).toHaveLength(20);
});
