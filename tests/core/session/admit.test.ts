import { describe, expect, it } from 'vitest';
import { objection } from '../../../core/session/admit.ts';
import { fiveFastballs, Story } from './story.ts';

describe('what a coach may not say now', () => {
  const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
  const place = story.throw(90, 16, -6);
  const ledger = story.ledger();

  it('is refused with what, where and why', () => {
    expect(objection(ledger, { kind: 'intent-set', session: 's7', intent: 'changeup' })).toMatchObject({ code: 'unknown-session', path: 'session' });
    expect(objection(ledger, { kind: 'trial-resumed', session: 's1', trial: 'A' })).toMatchObject({ code: 'no-such-trial' });
    expect(objection(ledger, { kind: 'throws-moved', places: [place, 1], session: null })).toMatchObject({ code: 'no-throw-there', path: 'places.1' });
    expect(objection(ledger, { kind: 'throws-excluded', session: 's1', places: [1], reason: 'x' })).toMatchObject({ code: 'not-of-this-session', path: 'places.0' });
    expect(objection(ledger, { kind: 'baseline-renewed', session: 's1', stage: 'mound' })).toMatchObject({ code: 'too-few-fastballs' });
  });

  it('is nothing of what makes sense', () => {
    expect(objection(ledger, { kind: 'intent-set', session: 's1', intent: 'changeup' })).toBeNull();
    expect(objection(ledger, { kind: 'throws-moved', places: [place], session: null })).toBeNull();
    const ready = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    fiveFastballs(ready);
    expect(objection(ready.ledger(), { kind: 'baseline-renewed', session: 's1', stage: 'mound' })).toBeNull();
  });

  it('in a closed session is everything but mending its record', () => {
    const closed = story.say({ kind: 'session-closed', session: 's1' }).ledger();
    expect(objection(closed, { kind: 'intent-set', session: 's1', intent: 'changeup' })).toMatchObject({ code: 'session-closed' });
    expect(objection(closed, { kind: 'throws-tagged', session: 's1', places: [place], intent: 'changeup', trial: null })).toBeNull();
  });

  it('is a session in a time zone that nobody knows', () => {
    const says = story.facts[0]!.said;
    if (says.kind !== 'session-opened') throw new Error('the story opens with a session');
    expect(objection(ledger, { ...says, session: 's2', timeZone: 'Mars/Base' })).toMatchObject({ code: 'unknown-time-zone' });
    expect(objection(ledger, says)).toMatchObject({ code: 'session-known' });
  });
});
