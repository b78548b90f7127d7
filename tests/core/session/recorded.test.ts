import { describe, expect, it } from 'vitest';
import { from, lastValueFrom, scan, toArray } from 'rxjs';
import { applyChange, changeBetween } from '../../../core/session/change.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger, type Ledger } from '../../../core/session/ledger.ts';
import { listSessions, sliceOf } from '../../../core/session/recorded.ts';
import { viewsOf } from '../../../core/session/stream.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, summary, ZONE } from './story.ts';

/** Two athletes on one mound over two sittings, with throws moved, corrected, tagged later and excluded. */
function busyDay(): Story {
  const story = new Story();
  const early = story.throw(84, 9, -8);
  story.open('s1', 'ada').intent('s1', 'four-seam');
  fiveFastballs(story);
  story.say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: null });
  story.say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: null, reason: null });
  for (const vertical of [8, 9, 10]) story.throw(82, vertical, -10);
  story.open('s2', 'bo', 'left');
  const strayed = story.throw(82, 7, -11);
  story.say({ kind: 'throws-moved', places: [early, strayed], session: 's1' });
  story.correct(7, summary(82, 12, -9));
  story.say({ kind: 'session-closed', session: 's1' }).say({ kind: 'session-closed', session: 's2' });
  story.open('s3', 'ada').intent('s3', 'changeup');
  story.throw(81, 8, -10);
  story.say({ kind: 'throws-tagged', session: 's1', places: [early], intent: 'changeup', trial: 'A' });
  story.throw(81.5, 8, -10);
  return story;
}

describe('a recorded session', () => {
  it.each(['s1', 's2', 's3'])('%s played from its slice shows what was shown live at every place', (session) => {
    const { facts } = busyDay();
    const slice = sliceOf(facts, session)!;
    const live = new Map<number, unknown>();
    let ledger: Ledger = emptyLedger('north-1');
    for (const fact of facts) {
      ledger = foldFact(ledger, fact);
      live.set(fact.place, shown(ledger, session));
    }
    let played: Ledger = slice.carry;
    for (const fact of slice.facts) {
      played = foldFact(played, fact);
      expect(shown(played, session)).toEqual(live.get(fact.place));
    }
    expect(shown(played, session)).toEqual(shown(ledger, session));
  });

  it('travels as plain data: its slice survives being written and read', () => {
    const slice = sliceOf(busyDay().facts, 's3')!;
    expect(JSON.parse(JSON.stringify(slice))).toEqual(slice);
    expect(slice.carry.order).toEqual([]);
  });

  it('follows throws out of a session that was closed before it, and into one', () => {
    const story = new Story();
    story.open('s1', 'ada').intent('s1', 'four-seam');
    const [first, second] = fiveFastballs(story);
    story.say({ kind: 'session-closed', session: 's1' }).open('s2', 'bo', 'left').intent('s2', 'changeup');
    const own = story.throw(82, 7, -11);
    story.say({ kind: 'throws-moved', places: [first!], session: null });
    story.say({ kind: 'throws-moved', places: [second!], session: 's2' });
    story.say({ kind: 'throws-moved', places: [own], session: 's1' });
    story.throw(82, 8, -11);
    const slice = sliceOf(story.facts, 's2')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2')).toEqual(moundView(story.ledger(), 's2'));
  });

  it('begins at its opening, and brings along the earlier baseline as it was then', () => {
    const story = new Story();
    const early = story.throw(84, 9, -8);
    story.open('s1', 'ada').intent('s1', 'four-seam');
    const fastballs = fiveFastballs(story);
    story.throw(91, 17, -7);
    story.say({ kind: 'session-closed', session: 's1' });
    story.say({ kind: 'throws-excluded', session: 's1', places: [fastballs[0]!], reason: 'misread' });
    story.open('s2', 'ada').say({ kind: 'throws-moved', places: [early], session: 's2' });
    const slice = sliceOf(story.facts, 's2')!;
    expect(slice.facts[0]!.said.kind).toBe('session-opened');
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's2')).toEqual(moundView(story.ledger(), 's2'));
  });

  it('that the facts do not open has no slice', () => {
    expect(sliceOf(busyDay().facts, 's9')).toBeNull();
  });

  it('is listed with its throws, stages and trials, the newest first', () => {
    expect(listSessions(busyDay().ledger()).map(({ id, throws, trials }) => ({ id, throws, trials }))).toEqual([
      { id: 's3', throws: 2, trials: [] },
      { id: 's2', throws: 0, trials: [] },
      { id: 's1', throws: 10, trials: ['A'] },
    ]);
  });
});

function shown(ledger: Ledger, session: string): unknown {
  const { session: one, throws } = moundView(ledger, session);
  return { one, throws };
}

describe('the stream of views', () => {
  it('gives the view before the first fact and one after each, the same as folding by hand', async () => {
    const { facts } = busyDay();
    const views = await lastValueFrom(viewsOf(from(facts).pipe(scan(foldFact, emptyLedger('north-1'))), emptyLedger('north-1'), (ledger) => moundView(ledger, null)).pipe(toArray()));
    expect(views).toHaveLength(facts.length + 1);
    let ledger = emptyLedger('north-1');
    facts.forEach((fact, index) => {
      ledger = foldFact(ledger, fact);
      expect(views[index + 1]!.view).toEqual(moundView(ledger, null));
    });
  });

  it('can be sent as changes: each change turns the view before into the view after', () => {
    let ledger = emptyLedger('north-1');
    let view = moundView(ledger, 's1');
    for (const fact of busyDay().facts) {
      ledger = foldFact(ledger, fact);
      const after = moundView(ledger, 's1');
      expect(applyChange(view, JSON.parse(JSON.stringify(changeBetween(view, after))))).toEqual(after);
      view = after;
    }
  });

  it('sends one throw for one throw, however many there are', () => {
    const story = busyDay();
    const before = moundView(story.ledger(), 's3');
    const place = story.throw(82, 8, -10);
    expect(changeBetween(before, moundView(story.ledger(), 's3')).throws.map((thrown) => thrown.place)).toEqual([place]);
  });
});
