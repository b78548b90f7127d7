import { describe, expect, it } from 'vitest';
import { objection } from '../../../core/session/admit.ts';
import { applyChange, changeBetween } from '../../../core/session/change.ts';
import { checkpointsOf } from '../../../core/session/checkpoints.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { Story } from './story.ts';

const MANY = 1200;

/** Throws that nobody had, then a session. */
function forgotten(count = MANY): Story {
  const story = new Story();
  for (let n = 0; n < count; n += 1) story.throw(82, 8, -10);
  return story.open('s1', 'ada');
}
const viewOf = (story: Story) => moundView(story.ledger(), null);

describe('throws that nobody has', () => {
  it('are all counted and only the newest fifty listed, with the numbers they have among all', () => {
    const { unclaimed, unclaimedCount, unclaimedSince } = viewOf(forgotten());
    expect([unclaimed.length, unclaimedCount, unclaimedSince]).toEqual([50, MANY, MANY]);
    expect([unclaimed[0]?.number, unclaimed.at(-1)?.number, unclaimed.at(-1)?.place]).toEqual([MANY - 49, MANY, MANY]);
  });

  it('are few enough to be listed as they come, and go into a change with their count', () => {
    const story = forgotten(3);
    const before = viewOf(story);
    story.say({ kind: 'session-closed', session: 's1' }).throw(82, 8, -10);
    const after = moundView(story.ledger(), 's1');
    expect([after.unclaimed.length, after.unclaimedCount]).toEqual([4, 4]);
    expect(applyChange(before, changeBetween(before, after))).toEqual(after);
  });

  it('are said to come after the newest throw of the session that is shown', () => {
    const story = forgotten(3);
    story.throw(82, 8, -10);
    story.say({ kind: 'session-closed', session: 's1' }).throw(82, 8, -10);
    expect(viewOf(story)).toMatchObject({ unclaimedCount: 4, unclaimedSince: 1 });
  });
});

describe('claiming', () => {
  it('takes all of them in one statement, however many there are', () => {
    const view = viewOf(forgotten().say({ kind: 'throws-claimed', session: 's1', through: MANY }));
    expect([view.session!.counts.all, view.unclaimedCount]).toEqual([MANY, 0]);
  });

  it('leaves what came after the coach looked, and what another session has', () => {
    const story = forgotten(4).say({ kind: 'throws-moved', places: [2], session: 's1' }).open('s2', 'bo');
    story.say({ kind: 'throws-claimed', session: 's2', through: 3 });
    expect(moundView(story.ledger(), 's2').throws.map(({ place }) => place)).toEqual([1, 3]);
    expect(moundView(story.ledger(), 's2').unclaimed.map(({ place }) => place)).toEqual([4]);
  });

  it('is refused where nothing is unclaimed, and for a session that is closed', () => {
    const story = forgotten(2);
    expect(objection(story.ledger(), { kind: 'throws-claimed', session: 's1', through: 2 })).toBeNull();
    story.say({ kind: 'throws-claimed', session: 's1', through: 2 });
    expect(objection(story.ledger(), { kind: 'throws-claimed', session: 's1', through: 2 })).toMatchObject({ code: 'nothing-unclaimed', path: 'through' });
    story.say({ kind: 'session-closed', session: 's1' }).throw(82, 8, -10);
    expect(objection(story.ledger(), { kind: 'throws-claimed', session: 's1', through: 99 })).toMatchObject({ code: 'session-closed' });
  });

  it('plays back as it was shown live, each throw entering when it was claimed', () => {
    const { facts } = forgotten(3).say({ kind: 'throws-claimed', session: 's1', through: 3 });
    const slice = sliceOf(facts, 's1')!;
    expect(moundView(slice.facts.reduce(foldFact, slice.carry), 's1')).toEqual(moundView(facts.reduce(foldFact, new Story().ledger()), 's1'));
    expect([...checkpointsOf(slice, 's1').entersAt]).toEqual([[1, 2], [2, 2], [3, 2]]);
  });
});
