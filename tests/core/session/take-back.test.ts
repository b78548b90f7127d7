import { describe, expect, it, test } from 'vitest';
import type { CoachSays } from '../../../core/facts/coach.ts';
import type { MoundView } from '../../../core/facts/views.ts';
import { objection } from '../../../core/session/admit.ts';
import { takeBack } from '../../../core/session/take-back.ts';
import { touched } from '../../../core/session/touched.ts';
import { moundView } from '../../../core/session/view.ts';
import { fiveFastballs, Story, ZONE } from './story.ts';

const session = 's1';
const BEGUN = { kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: null } as const;

/** An evening that has something of everything: a baseline, a target, two trials, an excluded throw, a second athlete, throws of nobody. */
function evening(): { story: Story; fastballs: number[]; changeups: number[]; nobodys: number[] } {
  const story = new Story();
  const nobodys = [story.throw(80, 10, -8), story.throw(81, 10, -8)];
  story.open('s2', 'ilse').open(session, 'ada').intent(session, 'four-seam');
  const fastballs = fiveFastballs(story);
  story.say({ kind: 'zone-set', session, zone: ZONE, speedBand: { lowMps: -5, highMps: -3 }, reason: null });
  story.say(BEGUN);
  const changeups = [story.throw(81, 8, -9), story.throw(82, 9, -9), story.throw(83, 9, -8)];
  story.say({ ...BEGUN, intent: 'split' }).say({ kind: 'trial-resumed', session, trial: 'A' });
  story.say({ kind: 'throws-excluded', session, places: [changeups[0]!], reason: 'slipped' });
  story.say({ kind: 'comfort-said', session, from: 'bench', comfortable: true });
  return { story, fastballs, changeups, nobodys };
}
const view = (story: Story): MoundView => moundView(story.ledger(), null);

const { fastballs, changeups: places, nobodys } = evening();
const ACTS: readonly CoachSays[] = [
  { kind: 'intent-set', session, intent: 'slider' },
  BEGUN,
  { kind: 'trial-resumed', session, trial: 'B' },
  { kind: 'trial-left', session },
  { kind: 'stage-set', session, stage: 'long-toss', distanceM: 40, effort: 'firm' },
  { kind: 'zone-set', session, zone: { ...ZONE, verticalM: -0.3 }, speedBand: null, reason: 'deeper' },
  { kind: 'zone-removed', session, reason: 'another pitch first' },
  { kind: 'observation-ticked', session, what: 'loose-wrist-and-forearm', seen: true, place: null },
  { kind: 'throws-excluded', session, places, reason: 'misread' },
  { kind: 'throws-restored', session, places: [places[0]!] },
  { kind: 'throws-tagged', session, places: [fastballs[4]!, ...places], intent: 'split', trial: 'B' },
  { kind: 'throw-bookmarked', session, place: places[1]!, on: true },
  { kind: 'throws-moved', places: places.slice(1), session: 's2' },
  { kind: 'throws-claimed', session, through: nobodys[1]! },
  { kind: 'note-written', session, text: 'thumb slid', place: places[2]! },
  { kind: 'mound-passed', session: 's2' },
  { kind: 'feedback-set', session, mode: { kind: 'summary', after: 3 }, askFirst: true },
  { kind: 'decision-set', session, beforeS: 0.2, basis: 'same-distance' },
  { kind: 'gate-set', session, stage: 'mound', gate: { comfort: false, shareAbove: 0.6 } },
  { kind: 'count-planned', session, throws: 30, dayMost: 60 },
  { kind: 'comfort-said', session, from: 'bench', comfortable: false },
];

describe('an act of the coach', () => {
  test.each(ACTS.map((says) => [says.kind, says] as const))('%s is taken back by what stood before it, and nothing else of the session changes', (_, says) => {
    const { story } = evening();
    const before = view(story);
    expect(objection(story.ledger(), says)).toBeNull();
    story.say(says);
    const after = view(story);
    expect(touched(says, after)).not.toBe(touched(says, before));
    const taken = takeBack(says, before, story.facts.length);
    expect(taken.kind).toBe('back');
    for (const one of taken.kind === 'back' ? taken.says : []) {
      expect(objection(story.ledger(), one)).toBeNull();
      story.say(one);
    }
    const undone = view(story);
    expect(touched(says, undone)).toBe(touched(says, before));
    expect(plain(undone)).toEqual(plain(before));
  });

  /** What a log that has gone on must differ in: its place and time; that an intent was said afterwards; a trial begun in between; what a saying says of when. */
  function plain(shown: MoundView): unknown {
    const { session: open, throws, unclaimed, unclaimedCount } = shown;
    const { trials, feedback, progress: _, comfort, windows, intent, trial, notes, zone, decision, plannedThrows, stage } = open!;
    return {
      id: open!.id, trials: trials.slice(0, 2), mode: feedback.mode, comfortable: comfort?.comfortable, windows, intent, trial, notes, zone, decision, plannedThrows, stage,
      throws: throws.map(({ taggedLater: __, ...thrown }) => thrown), unclaimed: unclaimed.map(({ place }) => place), unclaimedCount,
    };
  }
});

describe('what has no honest inverse says so', () => {
  const { story } = evening();
  const before = view(story);
  const staying: readonly CoachSays[] = [
    { kind: 'session-closed', session },
    { kind: 'baseline-renewed', session, stage: 'mound' },
    { kind: 'arm-reported', session, from: 'bench', said: 'pain', areas: ['elbow'] },
    { kind: 'pain-answered', session, answer: 'reported-by-mistake', words: 'a slip of the thumb' },
    { kind: 'gate-passed', session, stage: 'mound', trial: 'A', reason: null },
  ];
  test.each(staying)('$kind stays', (says) => {
    expect(takeBack(says, before, 99)).toEqual({ kind: 'never', because: 'stays' });
    expect(touched(says, before)).toBeNull();
  });

  it('a first intent has nothing before it; a first target is taken away again', () => {
    const fresh = view(new Story().open(session, 'ada'));
    expect(takeBack({ kind: 'intent-set', session, intent: 'curve' }, fresh, 9)).toEqual({ kind: 'never', because: 'nothing-before' });
    expect(takeBack({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null }, fresh, 9)).toEqual({ kind: 'back', says: [{ kind: 'zone-removed', session, reason: 'taken back' }] });
  });

  it('of more unclaimed throws than a view lists, none is given back', () => {
    const long = new Story();
    for (let thrown = 0; thrown < 51; thrown += 1) long.throw(80, 10, -8);
    long.open(session, 'ada');
    expect(takeBack({ kind: 'throws-claimed', session, through: 51 }, view(long), 99)).toEqual({ kind: 'never', because: 'too-many' });
  });
});

describe('two coaches', () => {
  it('a throw that another coach has moved on is not taken from where it is now', () => {
    const { story, changeups } = evening();
    const before = view(story);
    const moved: CoachSays = { kind: 'throws-moved', places: [changeups[1]!], session: 's2' };
    story.say(moved).say({ kind: 'throws-moved', places: [changeups[1]!], session: null });
    const taken = takeBack(moved, before, 0);
    expect(taken.kind === 'back' && objection(story.ledger(), taken.says[0]!)).toMatchObject({ code: 'moved-since', path: 'places.0' });
  });

  it('a note is withdrawn once', () => {
    const { story } = evening();
    story.say({ kind: 'note-written', session, text: 'thumb slid', place: null });
    const withdrawn = { kind: 'note-withdrawn', session, note: story.facts.length } as const;
    expect(objection(story.ledger(), withdrawn)).toBeNull();
    story.say(withdrawn);
    expect(view(story).session?.notes).toEqual([]);
    expect(objection(story.ledger(), withdrawn)).toMatchObject({ code: 'no-such-note' });
  });
});

it('a tag taken back from a throw that nobody had spoken of leaves it unspoken of', () => {
  const story = new Story().open(session, 'ada');
  const place = story.throw(80, 10, -8);
  const before = view(story);
  const tagged: CoachSays = { kind: 'throws-tagged', session, places: [place], intent: 'changeup', trial: null };
  story.say(tagged);
  const taken = takeBack(tagged, before, story.facts.length);
  for (const one of taken.kind === 'back' ? taken.says : []) story.say(one);
  expect(view(story).throws[0]).toMatchObject({ intent: null, trial: null, taggedLater: false });
});
