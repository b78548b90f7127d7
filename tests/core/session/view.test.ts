import { describe, expect, it } from 'vitest';
import { moundView } from '../../../core/session/view.ts';
import { inchesToM, mToInches, mpsToMph } from '../../../core/units/convert.ts';
import { fiveFastballs, Story, summary, ZONE } from './story.ts';

function bullpen(hand: 'right' | 'left' = 'right'): Story {
  const story = new Story().open('s1', 'ada', hand).intent('s1', 'four-seam');
  fiveFastballs(story, hand === 'right' ? -1 : 1);
  return story
    .say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: { words: 'throw it through the glove', focus: 'external' } })
    .say({ kind: 'zone-set', session: 's1', zone: ZONE, speedBand: { lowMps: -5, highMps: -3 }, reason: null });
}

describe('the fastball baseline on a mound', () => {
  it('is forming until the fifth fastball, and then stands at their robust centre', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    for (const speed of [90, 91, 89, 90]) story.throw(speed, 16, -6);
    expect(moundView(story.ledger(), null).session?.baseline).toEqual({ kind: 'forming', have: 4, need: 5 });
    story.throw(90, 16, -6);
    const { session } = moundView(story.ledger(), null);
    expect(session?.baseline).toMatchObject({ kind: 'baseline', number: 1, count: 5, origin: 'this-session', armSideM: 0.1524 });
  });

  it('stands still when more fastballs come, and moves only when a new one is asked for', () => {
    const story = bullpen().intent('s1', 'four-seam');
    const before = moundView(story.ledger(), null).session?.baseline;
    for (const speed of [86, 86.2, 85.8, 86.1, 85.9]) story.throw(speed, 15, -6);
    expect(moundView(story.ledger(), null).session?.baseline).toEqual(before);
    story.say({ kind: 'baseline-renewed', session: 's1', stage: 'mound' });
    const after = moundView(story.ledger(), null).session?.baseline;
    expect(after).toMatchObject({ number: 2 });
    expect(mpsToMph((after as { speedMps: number }).speedMps)).toBeCloseTo(86, 2);
  });

  it('of an earlier day serves with its date until five fastballs of today are there', () => {
    const story = bullpen().say({ kind: 'session-closed', session: 's1' }).open('s2', 'ada').intent('s2', 'changeup');
    const formedAt = story.facts[6]!.atMs;
    story.throw(82, 8, -10);
    const { session, throws } = moundView(story.ledger(), null);
    expect(session?.baseline).toMatchObject({ kind: 'baseline', origin: 'earlier', number: 1, atMs: formedAt });
    expect(mToInches(throws[0]!.separation!.verticalM as number)).toBeCloseTo(-8, 1);
    expect(session?.zone).toEqual(moundView(bullpen().ledger(), null).session?.zone);
  });

  it('of one athlete never serves another', () => {
    const story = bullpen().say({ kind: 'session-closed', session: 's1' }).open('s2', 'bo');
    expect(moundView(story.ledger(), null).session?.baseline).toEqual({ kind: 'forming', have: 0, need: 5 });
  });
});

describe('separation on a mound', () => {
  it('is the throw minus the fastball: slower, lower and more to the arm side', () => {
    const story = bullpen();
    story.throw(82, 8, -10);
    const { separation, miss } = moundView(story.ledger(), null).throws.at(-1)!;
    expect(mpsToMph(separation!.speedMps as number)).toBeCloseTo(-8, 1);
    expect(mToInches(separation!.verticalM as number)).toBeCloseTo(-8, 1);
    expect(mToInches(separation!.armSideM as number)).toBeCloseTo(4, 1);
    expect(separation!.arrivalS as number).toBeGreaterThan(0.03);
    expect(miss).toMatchObject({ onTarget: true, paceOnTarget: true });
    expect(miss!.size).toBeCloseTo(-1.5, 2);
  });

  it('of a left-hander is the same throw in the mirror', () => {
    const right = bullpen('right');
    right.throw(82, 8, -10);
    const left = bullpen('left');
    left.throw(82, 8, 10);
    expect(moundView(left.ledger(), null).throws.map(({ separation, miss }) => ({ separation, miss })))
      .toEqual(moundView(right.ledger(), null).throws.map(({ separation, miss }) => ({ separation, miss })));
  });

  it('is not given for an excluded throw, and comes back when it is restored', () => {
    const story = bullpen();
    const place = story.throw(82, 8, -10);
    story.say({ kind: 'throws-excluded', session: 's1', places: [place], reason: 'hit the mound' });
    expect(moundView(story.ledger(), null).throws.at(-1)).toMatchObject({ excluded: 'hit the mound', separation: null, miss: null });
    story.say({ kind: 'throws-restored', session: 's1', places: [place] });
    expect(moundView(story.ledger(), null).throws.at(-1)?.miss?.onTarget).toBe(true);
  });

  it('follows a correction by the device', () => {
    const story = bullpen();
    story.throw(82, 8, -10);
    story.correct(6, summary(82, 14, -6));
    const last = moundView(story.ledger(), null).throws.at(-1)!;
    expect(last.corrected).toBe(true);
    expect(mToInches(last.separation!.verticalM as number)).toBeCloseTo(-2, 1);
  });
});

describe('windows of a trial', () => {
  it('say how many throws they still need instead of giving a number', () => {
    const story = bullpen();
    story.throw(82, 8, -10);
    story.throw(82.5, 9, -11);
    const [three, five] = moundView(story.ledger(), null).session!.windows;
    expect(three!.verticalM).toEqual({ kind: 'too-few', count: 2, need: 3 });
    expect(five!.spread).toEqual({ kind: 'too-few', count: 2, need: 5 });
  });

  it('leave out fastballs thrown in between, and excluded throws', () => {
    const story = bullpen();
    for (const vertical of [8, 9]) story.throw(82, vertical, -10);
    story.intent('s1', 'four-seam').throw(90, 16, -6);
    story.say({ kind: 'trial-resumed', session: 's1', trial: 'A' });
    const wild = story.throw(82, 30, -10);
    story.throw(82, 10, -11);
    story.say({ kind: 'throws-excluded', session: 's1', places: [wild], reason: 'misread' });
    const { windows, counts } = moundView(story.ledger(), null).session!;
    const all = windows.find(({ size }) => size === 'all')!;
    expect(all.count).toBe(3);
    expect(all.verticalM.kind === 'estimate' ? mToInches(all.verticalM.mean) : null).toBeCloseTo(-7, 1);
    expect(counts).toEqual({ all: 10, stage: 10, trial: 4 });
  });

  it('give a mean, an ellipse and a share, each with its uncertainty, from five throws on', () => {
    const story = bullpen();
    for (const [vertical, arm] of [[8, 10], [9, 11], [7, 9.5], [8.5, 10.5], [2, 10]]) story.throw(82, vertical!, -arm!);
    const five = moundView(story.ledger(), null).session!.windows[1]!;
    expect(five.onTarget).toMatchObject({ kind: 'share', hits: 4, count: 5 });
    expect(five.spread.kind === 'ellipse' && five.spread.areaLowM2 < five.spread.areaM2 && five.spread.areaM2 < five.spread.areaHighM2).toBe(true);
    expect(five.verticalM.kind === 'estimate' && five.verticalM.low < five.verticalM.mean && five.verticalM.mean < five.verticalM.high).toBe(true);
  });
});

describe('whose throw it is', () => {
  it('a throw before any session is unclaimed, and one tap claims it', () => {
    const story = new Story();
    const place = story.throw(85, 10, -8);
    expect(moundView(story.ledger(), null)).toMatchObject({ session: null, throws: [], unclaimed: [{ place, armSideM: 'not-defined' }] });
    story.open('s1', 'ada').say({ kind: 'throws-moved', places: [place], session: 's1' });
    const view = moundView(story.ledger(), null);
    expect(view.unclaimed).toEqual([]);
    expect(view.throws).toMatchObject([{ place, armSideM: inchesToM(8) }]);
  });

  it('a run moved to the next arm is recomputed on both sides, and is as it was when moved back', () => {
    const story = bullpen();
    const run = [story.throw(82, 8, -10), story.throw(82, 9, -10)];
    const before = moundView(story.ledger(), 's1');
    story.open('s2', 'bo', 'left').say({ kind: 'throws-moved', places: run, session: 's2' });
    expect(moundView(story.ledger(), 's1').session?.counts.trial).toBe(0);
    expect(moundView(story.ledger(), 's2').throws.map(({ place, intent, armSideM }) => ({ place, intent, armSideM })))
      .toEqual(run.map((place) => ({ place, intent: null, armSideM: -inchesToM(10) })));
    story.say({ kind: 'throws-moved', places: run, session: 's1' });
    expect(moundView(story.ledger(), 's1').throws).toEqual(before.throws);
    expect(moundView(story.ledger(), 's1').session?.windows).toEqual(before.session?.windows);
  });

  it('two athletes alternate on one mound, each throw going to whoever has it', () => {
    const story = new Story().open('s1', 'ada').open('s2', 'bo');
    story.throw(80, 10, -5);
    story.say({ kind: 'mound-passed', session: 's1' });
    story.throw(81, 10, -5);
    const view = moundView(story.ledger(), null);
    expect(view.session?.id).toBe('s1');
    expect(view.openSessions.map(({ active }) => active)).toEqual([true, false]);
    expect(moundView(story.ledger(), 's2').throws).toHaveLength(1);
    expect(view.throws).toHaveLength(1);
  });

  it('is nobody’s once the session that had the mound is closed, whoever else waits: the closed one stays in view', () => {
    const story = new Story().open('s1', 'ada').open('s2', 'bea').say({ kind: 'mound-passed', session: 's1' }).say({ kind: 'session-closed', session: 's1' });
    story.throw(90, 16, -6);
    const { session, openSessions, unclaimed } = moundView(story.ledger(), null);
    expect(session).toMatchObject({ id: 's1', active: false });
    expect(session?.closedAtMs).not.toBeNull();
    expect(openSessions.map(({ id, active }) => [id, active])).toEqual([['s2', false]]);
    expect(unclaimed).toHaveLength(1);
    story.say({ kind: 'mound-passed', session: 's2' });
    expect(moundView(story.ledger(), null).session).toMatchObject({ id: 's2', active: true });
  });

  it('a throw tagged later enters the fastballs and the baseline', () => {
    const story = new Story().open('s1', 'ada');
    const places = fiveFastballs(story);
    expect(moundView(story.ledger(), null).session?.baseline).toMatchObject({ kind: 'forming', have: 0 });
    story.say({ kind: 'throws-tagged', session: 's1', places, intent: 'four-seam', trial: null });
    expect(moundView(story.ledger(), null).session?.baseline).toMatchObject({ kind: 'baseline', number: 1 });
  });
});

describe('a very long session', () => {
  it('is shown by its newest two hundred throws, numbered among all, and counted and averaged over every one', () => {
    const story = bullpen();
    for (let count = 0; count < 300; count += 1) story.throw(80 + (count % 7), 8 + (count % 5), -10 - (count % 3));
    const { session, throws } = moundView(story.ledger(), null);
    expect([throws.length, throws[0]!.number, throws.at(-1)!.number]).toEqual([200, 106, 305]);
    expect([session!.counts, session!.trial!.count, session!.windows.at(-1)!.count]).toEqual([{ all: 305, stage: 305, trial: 300 }, 300, 300]);
    expect(moundView(story.ledger(), null, Infinity).throws).toHaveLength(305);
  });
});

describe('what a stage does not define', () => {
  it('is said so in catch play, which has no plate', () => {
    const story = new Story().open('s1', 'ada').say({ kind: 'stage-set', session: 's1', stage: 'catch-play', distanceM: 18, effort: 'easy' });
    story.throw(60, 8, -10);
    expect(moundView(story.ledger(), null).throws[0]).toMatchObject({ plateHeightM: 'not-defined', verticalApproachRad: 'not-defined' });
  });
});
