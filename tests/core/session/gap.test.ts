import { describe, expect, it } from 'vitest';
import { coachSaysSchema } from '../../../core/facts/coach.ts';
import type { Decision } from '../../../core/facts/decision-says.ts';
import type { ThrowBody } from '../../../core/facts/frames.ts';
import type { GapView, ThrowView } from '../../../core/facts/views.ts';
import { decisionBeforeS } from '../../../core/flight/decision-point.ts';
import { objection } from '../../../core/session/admit.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { emptyLedger } from '../../../core/session/ledger.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { moundView } from '../../../core/session/view.ts';
import { Story, summary } from './story.ts';

type Hand = 'right' | 'left';

/** A ball seen as constant acceleration from 16.5 m on; `side` is −1 for a right-hander. Release and direction in metres and m/s, arm side positive. */
function seen(side: -1 | 1, speedMps: number, lift: { readonly up: number; readonly armSide: number }, release = { up: 1.8, armSide: 0.55 }, climbMps = -1): ThrowBody {
  return {
    constant: {
      start: [side * release.armSide, 16.5, release.up], velocity: [side * -1, -speedMps, climbMps],
      acceleration: [side * lift.armSide, 8, lift.up - 9.80665], distance: 16.5,
    },
    extension: 18.4404 - 16.5,
  };
}

const fastballLift = { up: 5.5, armSide: 2 };

function bullpen(hand: Hand = 'right'): Story {
  return baselineIn(new Story().open('s1', 'ada', hand), 's1', hand);
}

function baselineIn(story: Story, session: string, hand: Hand = 'right'): Story {
  const side = hand === 'right' ? -1 : 1;
  story.intent(session, 'four-seam');
  for (const off of [0, 0.2, -0.2, 0.1, -0.1]) story.measured(seen(side, 41 + off, { up: 5.5 + off, armSide: 2 - off }, { up: 1.8 + off / 10, armSide: 0.55 }));
  return story.intent(session, 'changeup');
}

const last = (story: Story): ThrowView => moundView(story.ledger(), null).throws.at(-1)!;
const gapOfLast = (story: Story): GapView => last(story).gap as GapView;

describe('the gap of a throw seen in flight', () => {
  it('of another fastball called a changeup is next to nothing, all the way', () => {
    const story = bullpen();
    story.measured(seen(-1, 41, fastballLift));
    const gap = gapOfLast(story);
    expect(gap).toMatchObject({ aimedArrivalS: 0, decisionBasis: 'same-time', decisionBeforeS: 0.175, decisionWidths: 0, plateWidths: 0 });
    expect(gap.lineWidths).toEqual(Array.from({ length: 21 }, () => 0));
  });

  it('of a changeup opens on the way, from nothing at the hand, and tells how much later it arrives', () => {
    const story = bullpen();
    story.measured(seen(-1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.8, armSide: 0.55 }, 0));
    const { gap, separation } = last(story);
    const { aimedArrivalS, decisionS, decisionWidths, plateWidths, lineStepS, lineWidths } = gap as GapView;
    expect(lineWidths[0]).toBe(0);
    expect(decisionWidths).toBeGreaterThan(0.5);
    expect(aimedArrivalS).toBeGreaterThan(0.04);
    expect(Math.abs(aimedArrivalS - (separation!.arrivalS as number))).toBeLessThan(0.001);
    expect(lineStepS * 20 - decisionS).toBeCloseTo(0.175, 3);
    expect(plateWidths).toBe(lineWidths[20]);
    const before = Math.floor(decisionS / lineStepS);
    expect(decisionWidths).toBeGreaterThanOrEqual(Math.min(lineWidths[before]!, lineWidths[before + 1]!) - 0.01);
    expect(decisionWidths).toBeLessThanOrEqual(Math.max(lineWidths[before]!, lineWidths[before + 1]!) + 0.01);
  });

  it('starts at the release shift: 10 cm lower out of the hand is 1.36 ball widths', () => {
    const story = bullpen();
    story.measured(seen(-1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.7, armSide: 0.55 }, 0));
    const { gap, separation } = last(story);
    expect(separation!.releaseShiftM).toBe(0.1);
    expect((gap as GapView).lineWidths[0]).toBe(1.36);
  });

  it('of a left-hander is the same in the mirror', () => {
    const gaps = (['right', 'left'] as const).map((hand) => {
      const story = bullpen(hand);
      story.measured(seen(hand === 'right' ? -1 : 1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.75, armSide: 0.7 }, 0));
      return gapOfLast(story);
    });
    expect(gaps[0]).toEqual(gaps[1]);
    expect(gaps[0]!.decisionWidths).toBeGreaterThan(0.5);
  });

  it('is told against the fastball that stands, also after it was renewed or corrected', () => {
    const story = bullpen();
    story.measured(seen(-1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.8, armSide: 0.55 }, 0));
    const before = gapOfLast(story);
    expect(gapOfLast(story)).toEqual(before);
    for (const sequence of [1, 2, 3]) story.correct(sequence, seen(-1, 43, fastballLift));
    const corrected = gapOfLast(story);
    expect(corrected.aimedArrivalS).toBeGreaterThan(before.aimedArrivalS + 0.005);
    const again = bullpen();
    again.measured(seen(-1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.8, armSide: 0.55 }, 0));
    expect(gapOfLast(again)).toEqual(before);
  });
});

describe('the decision point that a coach sets', () => {
  const changeup = seen(-1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.8, armSide: 0.55 }, 0);
  const set = (session: string, beforeS: number, basis: Decision['basis']) => ({ kind: 'decision-set', session, beforeS, basis }) as const;
  const thrown = (): Story => {
    const story = bullpen();
    story.measured(changeup);
    return story;
  };

  it('is 175 ms before the fastball and at the same time until something else is said', () => {
    expect(moundView(bullpen().ledger(), null).session!.decision).toEqual({ beforeS: 0.175, basis: 'same-time' });
  });

  it('holds for throws that were thrown before it was said, and only the gap at the decision point moves', () => {
    const story = thrown();
    const usual = gapOfLast(story);
    const early = gapOfLast(story.say(set('s1', 0.225, 'same-time')));
    expect(early).toMatchObject({ decisionBeforeS: 0.225, decisionBasis: 'same-time', plateWidths: usual.plateWidths, lineWidths: usual.lineWidths, aimedArrivalS: usual.aimedArrivalS });
    expect(usual.decisionS - early.decisionS).toBeCloseTo(0.05, 4);
    expect(early.decisionWidths).not.toBe(usual.decisionWidths);
    expect(gapOfLast(story.say(set('s1', 0.175, 'same-time')))).toEqual(usual);
  });

  it('gives another gap at the same distance than at the same time, and says which one it is', () => {
    const story = thrown();
    const sameTime = gapOfLast(story);
    const sameDistance = gapOfLast(story.say(set('s1', 0.175, 'same-distance')));
    expect(sameDistance).toMatchObject({ decisionBasis: 'same-distance', decisionS: sameTime.decisionS });
    expect(Math.abs(sameDistance.decisionWidths - sameTime.decisionWidths)).toBeGreaterThan(0.2);
    expect(moundView(story.ledger(), null).session!.decision).toEqual({ beforeS: 0.175, basis: 'same-distance' });
  });

  it('goes with the athlete into the next session, and with nobody else', () => {
    const story = bullpen().say(set('s1', 0.2, 'same-distance')).say({ kind: 'session-closed', session: 's1' }).open('s2', 'bo').open('s3', 'ada');
    const of = (session: string): Decision => moundView(story.ledger(), session).session!.decision;
    expect([of('s2'), of('s3')]).toEqual([{ beforeS: 0.175, basis: 'same-time' }, { beforeS: 0.2, basis: 'same-distance' }]);
    story.say(set('s3', 0.15, 'same-time'));
    expect([of('s1'), of('s3')]).toEqual([{ beforeS: 0.2, basis: 'same-distance' }, { beforeS: 0.15, basis: 'same-time' }]);
    baselineIn(story, 's3').measured(changeup);
    expect(gapOfLast(story)).toMatchObject({ decisionBeforeS: 0.15, decisionBasis: 'same-time' });
  });

  it('shows in a recording at every place the gaps that were shown live', () => {
    const story = thrown().say(set('s1', 0.21, 'same-distance')).say({ kind: 'session-closed', session: 's1' });
    baselineIn(story.open('s2', 'ada'), 's2').measured(changeup);
    story.say(set('s2', 0.15, 'same-time')).measured(changeup);
    const slice = sliceOf(story.facts, 's2')!;
    let live = story.facts.filter(({ place }) => place < slice.facts[0]!.place).reduce(foldFact, emptyLedger('north-1'));
    let played = slice.carry;
    const decisions = new Set<number>();
    for (const fact of slice.facts) {
      [live, played] = [foldFact(live, fact), foldFact(played, fact)];
      const [shown, replayed] = [moundView(live, 's2'), moundView(played, 's2')];
      expect([replayed.session!.decision, replayed.throws.map(({ gap }) => gap)]).toEqual([shown.session!.decision, shown.throws.map(({ gap }) => gap)]);
      decisions.add(replayed.session!.decision.beforeS);
    }
    expect([...decisions]).toEqual([0.21, 0.15]);
  });

  it('lies 150 to 225 ms before the fastball, for core as for what may be said, and is not set once the session is closed', () => {
    const { least, most } = decisionBeforeS;
    const allowed = (beforeS: number): boolean => coachSaysSchema.safeParse(set('s1', beforeS, 'same-time')).success;
    expect([least, most, least - 0.001, most + 0.001].map(allowed)).toEqual([true, true, false, false]);
    const closed = bullpen().say({ kind: 'session-closed', session: 's1' });
    expect(objection(closed.ledger(), set('s1', 0.2, 'same-time'))).toMatchObject({ code: 'session-closed' });
  });
});

describe('the gap that is not there', () => {
  const changeup = seen(-1, 36.5, { up: 2.5, armSide: 4 });

  it('is none for fastballs, without a baseline, and for an excluded throw', () => {
    const early = new Story().open('s1', 'ada').intent('s1', 'changeup');
    early.measured(changeup);
    expect(last(early).gap).toBeNull();
    expect(last(bullpen().intent('s1', 'four-seam')).gap).toBeNull();
    const story = bullpen();
    const place = story.measured(changeup);
    story.say({ kind: 'throws-excluded', session: 's1', places: [place], reason: 'hit the mound' });
    expect(last(story).gap).toBeNull();
  });

  it('is not visible to a device that sees only spin, and not sent by one that gives only a summary', () => {
    const spinOnly = bullpen();
    spinOnly.measured(summary(82, 8, -10), 'spin-only');
    expect(last(spinOnly)).toMatchObject({ gap: 'not-visible', separation: { arrivalS: expect.any(Number) as number } });
    const brief = bullpen();
    brief.throw(82, 8, -10);
    expect(last(brief).gap).toBe('not-sent');
  });

  it('is lacking where one of the five fastballs gave no path, with its reason', () => {
    const story = new Story().open('s1', 'ada').intent('s1', 'four-seam');
    for (const speed of [41, 41.2, 40.8, 41.1]) story.measured(seen(-1, speed, fastballLift));
    story.throw(92, 16, -6);
    story.intent('s1', 'changeup').measured(changeup);
    expect(last(story).gap).toBe('not-sent');
  });

  it('is not defined in catch play, which has no plate', () => {
    const story = new Story().open('s1', 'ada').say({ kind: 'stage-set', session: 's1', stage: 'catch-play', distanceM: 18.4404, effort: 'easy' }).intent('s1', 'four-seam');
    for (const speed of [31, 31.2, 30.8, 31.1, 30.9]) story.measured(seen(-1, speed, fastballLift));
    story.intent('s1', 'changeup').measured(seen(-1, 28, { up: 2.5, armSide: 4 }));
    expect(last(story).gap).toBe('not-defined');
  });

  it('of a throw whose path contradicts itself is none, as its separation is', () => {
    const story = bullpen();
    story.measured({ constant: { start: [0, 16.5, 1.8], velocity: [0, -12, 0], acceleration: [0, 30, -9.8], distance: 16.5 } });
    expect(last(story)).toMatchObject({ problem: expect.any(String) as string, gap: null });
  });
});

it('a throw carries no path to a screen, which has the baseline’s once, and its gap in under 400 bytes', () => {
  const story = bullpen();
  story.measured(seen(-1, 36.5, { up: 2.5, armSide: 4 }, { up: 1.77, armSide: 0.6 }, 0));
  const view = moundView(story.ledger(), null);
  expect(JSON.stringify(view.throws)).not.toContain('positionM');
  expect(view.session!.baseline).toMatchObject({ kind: 'baseline', path: { positionM: [-0.55, 16.5, 1.8], velocityMps: [1, -41, -1] } });
  const bytes = JSON.stringify(view.throws.at(-1)!.gap).length;
  console.log(`the gap of a throw: ${bytes} bytes of the throw’s ${JSON.stringify(view.throws.at(-1)).length}`);
  expect(bytes).toBeLessThan(400);
});
