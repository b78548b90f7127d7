import type { CoachSays } from '../../../core/facts/coach.ts';
import type { Fact } from '../../../core/facts/fact.ts';
import type { AthleteDays } from '../../../core/facts/wire.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { sessionRecord } from '../../../core/session/session-record.ts';
import { foldedSession, type AthleteRecord } from '../../../web/trials/record.ts';
import { fiveFastballs, Story, ZONE } from '../../core/session/story.ts';

const DAY_MS = 86_400_000;
/** Told by the words of their cue, in the order of their letters. */
const CUES = ['through the glove', 'over the top'] as const;

const begin = (session: string, words: string): CoachSays => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
export const opened = (session: string, k: number, more: Partial<Extract<CoachSays, { kind: 'comparison-opened' }>> = {}): CoachSays =>
  ({ kind: 'comparison-opened', session, k, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline: 1, ...more });

/** How far above the middle of the zone each throw of a block goes, in inches. */
export const FAR = [5.2, 6.1, 4.7, 5.8, 5.4] as const;
export const NEAR = [0.4, -0.8, 1.1, 0.2, -0.5] as const;

/** An evening on one mound: five fastballs, the zone of the stories, and trials in alternating blocks. */
export function evening(session: string, blocks: readonly (readonly [letter: 'A' | 'B', above: readonly number[]])[], story = new Story()): Story {
  fiveFastballs(story.open(session, 'ada').intent(session, 'four-seam'));
  story.say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null });
  const begun = new Set<string>();
  for (const [letter, above] of blocks) {
    story.say(begun.has(letter) ? { kind: 'trial-resumed', session, trial: letter } : begin(session, CUES[letter === 'A' ? 0 : 1]));
    begun.add(letter);
    // The middle of the zone is 8 in below the fastball's 16 and 4 in beyond its 6 to the arm side.
    for (const up of above) story.throw(82 + up / 10, 8 + up, -10);
  }
  return story;
}

/** The same facts with everything from a place on so many days later. */
export function daysLater(facts: readonly Fact[], from: number, days: number): Fact[] {
  return facts.map((fact) => (fact.place < from ? fact : { ...fact, atMs: fact.atMs + days * DAY_MS }));
}

/** What a screen holds of the athlete of these facts, its sessions newest first. */
export function recordOf(facts: readonly Fact[], days: Partial<AthleteDays> = {}): AthleteRecord {
  const ids = facts.flatMap(({ said }) => (said.kind === 'session-opened' ? [said.session] : []));
  const ledger = facts.reduce(foldFact, emptyLedger('north-1'));
  const sessions = ids.toReversed().map((session) => foldedSession(sessionRecord(ledger, session)!)!);
  return { athlete: sessions[0]!.entry.athlete, sessions, days: { athlete: 'ada', days: [], pain: null, soreness: null, ...days } };
}
