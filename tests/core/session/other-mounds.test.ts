import { describe, expect, it } from 'vitest';
import type { CoachSays } from '../../../core/facts/coach.ts';
import type { AthleteElsewhere } from '../../../core/facts/elsewhere-says.ts';
import { athleteElsewhereSchema } from '../../../core/facts/elsewhere-says.ts';
import { objection } from '../../../core/session/admit.ts';
import { foldFact } from '../../../core/session/fold.ts';
import { sessionIn } from '../../../core/session/ledger.ts';
import { sliceOf } from '../../../core/session/recorded.ts';
import { workOf } from '../../../core/session/work.ts';
import { moundView } from '../../../core/session/view.ts';
import { comparisonsIn, fiveFastballs, Story, ZONE } from './story.ts';

const LATER_MS = 1_790_000_900_000;
const EARLIER_MS = 1_780_000_000_000;
const BAND = { lowMps: -5, highMps: -3 };
const fastball = (number: number, atMs: number): AthleteElsewhere['baselines'][number]['newest'] => ({
  number, stage: 'mound', count: 5, atMs, speedMps: 40, speedSpreadMps: 0.3, verticalM: 0.4, armSideM: 0.15,
  flightTimeS: 0.42, releaseHeightM: 'not-sent', releaseArmSideM: 'not-sent', path: 'not-sent', cloud: [[0, 0]],
});
const work = (words: string): string => workOf({ intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
const [THROUGH, OVER] = [work('through'), work('over')];
const told = (more: Partial<AthleteElsewhere> = {}): AthleteElsewhere => ({
  kind: 'athlete-elsewhere', athlete: 'ada', session: null, scienceVersion: 1, targets: [], baselines: [], tried: [], comparisons: 0, ...more,
});
const everything = (atMs: number): AthleteElsewhere => told({
  targets: [{ stage: 'mound', zone: { ...ZONE, verticalM: -0.3 }, speedBand: BAND, saidAtMs: atMs }],
  baselines: [{ newest: fastball(4, atMs), highestNumber: 4 }],
  tried: [{ stage: 'mound', tried: { family: 'split', throws: 12, meanMiss: 1.5, separation: null, comfortable: false } }],
  comparisons: 3,
  plans: {
    gates: [{ stage: 'mound', gate: { comfort: true, shareAbove: 0.6 }, saidAtMs: atMs }],
    count: { throws: 25, dayMost: 55, day: '2026-09-21', saidAtMs: atMs },
    decision: { beforeS: 0.2, basis: 'same-distance', saidAtMs: atMs },
    comparisons: [{ k: 3, stage: 'mound', zone: ZONE, openedAtMs: EARLIER_MS, days: [{ session: 'far-1', a: 'A', b: 'B', baseline: 4 }] }],
    compared: [{ k: 3, session: 'far-1', day: '2026-09-10', a: [4, 5, 4.5, 5.5, 4, 5], b: [-1, 0, -0.5, 0.5, -1, 0], workA: THROUGH, workB: OVER, lastAtMs: EARLIER_MS + 2 }],
    worked: [{ stage: 'mound', work: OVER, day: '2026-09-10', firstAtMs: EARLIER_MS, lastAtMs: EARLIER_MS + 2, trial: { letter: 'B', intent: 'changeup', grip: null, cue: { words: 'over', focus: 'external' } }, throws: 6, hits: 5, judged: 6, quietThrows: 0 }],
    comfort: [{ stage: 'mound', work: OVER, comfortable: true, atMs: EARLIER_MS }],
    passed: [{ stage: 'mound', work: OVER, trial: 'B', atMs: EARLIER_MS, reason: null }],
  },
});
const sessionOf = (story: Story, id: string | null = null) => moundView(story.ledger(), id).session!;

/** An evening of this mound with a target, a baseline and a comparison of its own, then closed. */
function evening(story = new Story(), session = 's1', baseline = 1): Story {
  fiveFastballs(story.open(session, 'ada').intent(session, 'four-seam'));
  for (const words of ['through', 'over']) story.say({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: 'external' } });
  story.say({ kind: 'zone-set', session, zone: ZONE, speedBand: null, reason: null });
  return story.say(comparison(session, comparisonsIn(story, session).nextK, baseline)).say({ kind: 'session-closed', session });
}
const comparison = (session: string, k: number, baseline = 1): CoachSays => ({ kind: 'comparison-opened', session, k, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline });

describe('a session of an athlete who has thrown from other mounds', () => {
  it('begins with the target, the band, the baseline and its date, and the families tried there', () => {
    const story = new Story().hear(everything(LATER_MS)).open('s1', 'ada');
    expect(sessionOf(story)).toMatchObject({
      zone: { verticalM: -0.3 }, speedBand: BAND,
      baseline: { kind: 'baseline', origin: 'earlier', number: 4, atMs: LATER_MS, speedMps: 40 },
      triedBefore: [{ family: 'split', throws: 12 }],
    });
    expect(comparisonsIn(story, 's1').nextK).toBe(4);
  });

  it('judges its throws against them from the first one on', () => {
    const story = new Story().hear(everything(LATER_MS)).open('s1', 'ada').intent('s1', 'changeup');
    story.throw(82, 8, -10);
    expect(moundView(story.ledger(), 's1').throws[0]).toMatchObject({ separation: { baseline: 4 }, miss: { zoneVerticalM: -0.3 } });
  });

  it('keeps what this mound heard later, stage by stage', () => {
    const story = evening().hear(everything(EARLIER_MS)).open('s2', 'ada');
    expect(sessionOf(story)).toMatchObject({ zone: { verticalM: ZONE.verticalM }, speedBand: null, baseline: { number: 1 } });
  });

  it('gives its baseline a number that no baseline of another mound has', () => {
    const story = evening().hear(everything(EARLIER_MS)).open('s2', 'ada').intent('s2', 'four-seam');
    fiveFastballs(story);
    expect(sessionOf(story).baseline).toMatchObject({ origin: 'this-session', number: 5 });
    expect(sessionOf(story.open('s3', 'ada')).baseline).toMatchObject({ origin: 'earlier', number: 5 });
  });

  it('begins with the gates, the comfort, the passed stages and the shares of there, what was found better, the plan of the day and the decision point', () => {
    const story = new Story().hear(everything(LATER_MS)).open('s1', 'ada').say({ kind: 'trial-begun', session: 's1', intent: 'changeup', grip: null, cue: { words: 'over', focus: 'external' } });
    const { progress, decision, armCare, plannedThrows, openedAtMs } = sessionOf(story);
    expect(progress.stages.find(({ stage }) => stage === 'mound')).toMatchObject({
      gate: { shareAbove: 0.6 }, passed: [{ trial: 'B' }], work: { comfort: { comfortable: true }, hits: 5, judged: 6, days: [{ day: '2026-09-10' }] },
    });
    expect({ decision, plannedThrows, most: armCare.dayMost }).toEqual({ decision: { beforeS: 0.2, basis: 'same-distance' }, plannedThrows: 25, most: 55 });
    expect(new Date(openedAtMs).toISOString().slice(0, 10)).toBe('2026-09-21');
    const offered = new Story().hear(everything(LATER_MS)).open('s1', 'ada');
    expect(sessionOf(offered).nextDaySet).toMatchObject({ kind: 'offered', because: 'found-better', trial: { cue: { words: 'over' } } });
  });

  it('keeps what was said later here, and an older log says nothing of plans', () => {
    const story = evening().say({ kind: 'gate-set', session: 's1', stage: 'mound', gate: { comfort: false, shareAbove: null } });
    expect(story.facts.at(-1)!.atMs).toBeGreaterThan(EARLIER_MS);
    story.hear(everything(EARLIER_MS)).open('s2', 'ada');
    expect(sessionOf(story).progress.stages.find(({ stage }) => stage === 'mound')!.gate).toEqual({ comfort: false, shareAbove: null });
    const older = new Story().hear(told({ comparisons: 2 })).open('s1', 'ada');
    expect(sessionOf(older)).toMatchObject({ plannedThrows: null, decision: { beforeS: 0.175 } });
    expect(comparisonsIn(older, 's1').nextK).toBe(3);
  });

  it('may go on with a comparison of another mound, whose days it then holds', () => {
    const story = evening(new Story().hear(everything(LATER_MS)), 's1', 5);
    const on = { kind: 'comparison-continued', session: 's1', k: 3, day: { session: 's1', a: 'A', b: 'B', baseline: 5 } } as const;
    expect(objection(story.ledger(), { ...on, day: { ...on.day, session: 'far-1' } })).toMatchObject({ code: 'day-known' });
    expect(objection(story.ledger(), on)).toBeNull();
    expect(comparisonsIn(story.say(on), 's1').here.find(({ k }) => k === 3)!.days.map(({ session }) => session)).toEqual(['far-1', 's1']);
  });

  it('is nobody else’s', () => {
    const story = new Story().hear(everything(LATER_MS)).open('s1', 'bo');
    expect(sessionOf(story)).toMatchObject({ zone: null, baseline: { kind: 'forming' }, triedBefore: [] });
    expect(comparisonsIn(story, 's1').nextK).toBe(1);
  });
});

describe('the number of a comparison', () => {
  it('leaves out what was given on other mounds, and is refused when it was', () => {
    const story = evening().hear(told({ comparisons: 5 }));
    expect(objection(story.ledger(), comparison('s1', 2))).toMatchObject({ code: 'not-the-next-number', sentence: expect.stringContaining('number 6, not 2') });
    expect(objection(story.ledger(), comparison('s1', 6))).toBeNull();
  });

  it('changes in a session that is open when another mound opens one', () => {
    const story = evening().open('s2', 'ada').hear(told({ session: 's2', comparisons: 2 }));
    expect(comparisonsIn(story, 's2')).toMatchObject({ nextK: 3, before: [{ k: 1 }] });
  });

  it('never goes back, whatever is told later', () => {
    const story = evening().open('s2', 'ada').hear(told({ session: 's2', comparisons: 7 })).hear(told({ session: 's2', comparisons: 2 }));
    expect(comparisonsIn(story, 's2').nextK).toBe(8);
    expect(objection(story.ledger(), comparison('s1', 3))).toMatchObject({ sentence: expect.stringContaining('number 8, not 3') });
    expect(objection(story.ledger(), comparison('s1', 8))).toBeNull();
  });
});

it.each(['s1', 's2', 's3'])('%s played from its slice shows what was shown live, before and after each telling', (session) => {
  const story = evening();
  story.hear(everything(LATER_MS)).open('s2', 'ada').intent('s2', 'four-seam');
  fiveFastballs(story);
  story.hear(told({ session: 's2', comparisons: 6 })).say({ kind: 'session-closed', session: 's2' });
  evening(story.hear({ ...everything(LATER_MS + 1), comparisons: 9 }), 's3', 6);
  story.hear(told({ session: 's1', comparisons: 11 })).say(comparison('s1', 12));
  const { facts } = story;
  const slice = sliceOf(facts, session)!;
  let played = JSON.parse(JSON.stringify(slice.carry)) as typeof slice.carry;
  for (const fact of slice.facts) {
    played = foldFact(played, fact);
    const live = facts.slice(0, fact.place).reduce(foldFact, new Story().ledger());
    expect(moundView(played, session).session).toEqual(moundView(live, session).session);
    expect(sessionIn(played, session)!.planned).toEqual(sessionIn(live, session)!.planned);
  }
  expect(moundView(played, session).session).toEqual(moundView(story.ledger(), session).session);
});

it('what is told of other mounds has the form that is written down', () => {
  expect(athleteElsewhereSchema.parse(everything(LATER_MS))).toEqual(everything(LATER_MS));
});
