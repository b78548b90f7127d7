import { describe, expect, test } from 'vitest';
import type { BodyEvidence, NextDaySet, StageProgress } from '../../../core/facts/advice-view.ts';
import { inchesToM, mphToMps } from '../../../core/units/convert.ts';
import { bodyWords } from '../../../web/bench/arm/body-words.ts';
import { driftWords } from '../../../web/bench/target/drift-words.ts';
import { offerWords, startingSet, thrownWords } from '../../../web/next-day/next-day-words.ts';
import { gateHistory, gateMark, gateSentences } from '../../../web/bench/way/gate-words.ts';
import { passing, typedShare } from '../../../web/bench/way/steps.ts';
import { speechIn } from '../../../web/words/speech.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const ZONE = 'America/Chicago';
const atMs = Date.parse('2026-09-21T18:00:00Z');

type Work = NonNullable<StageProgress['work']>;
const work = (more: Partial<Work> = {}): Work => ({ state: { kind: 'open', comfortAlone: false, needs: [] }, comfort: null, hits: 8, judged: 10, shareLowerBound: 0.4399, days: [], ...more });
const progress = (more: Partial<StageProgress> = {}): StageProgress => ({ stage: 'mound', gate: { comfort: true, shareAbove: 0.5 }, hasZone: true, work: work(), passed: [], ...more });
const alone = { kind: 'open', comfortAlone: true, needs: [] } as const;

describe('the words of a gate', () => {
  test('count, bound and what is asked; the bound is rounded down so that it never says more than it holds', () => {
    expect(gateSentences(progress(), ZONE, ENGLISH)).toEqual(['8 of 10 on target: at least 43 % is shown, more than 50 % is asked.', 'Comfort has not been asked yet.']);
    expect(gateSentences(progress(), ZONE, SPANISH)[0]).toBe('8 de 10 en el blanco: se muestra al menos 43 %, se pide más de 50 %.');
  });

  test('comfort alone says why: no zone here, or a gate that asks for no share', () => {
    const comfort = { comfortable: true, atMs };
    expect(gateSentences(progress({ hasZone: false, work: work({ state: alone, comfort }) }), ZONE, ENGLISH)).toEqual([
      'No target zone in this stage: the gate is comfort alone, and the athlete says it.', 'Comfortable, said Sep 21, 2026.',
    ]);
    expect(gateSentences(progress({ gate: { comfort: true, shareAbove: null }, work: work({ state: alone }) }), ZONE, ENGLISH)[0]).toBe('This gate asks for comfort alone, and the athlete says it.');
  });

  test('a gate without comfort does not speak of it', () => {
    expect(gateSentences(progress({ gate: { comfort: false, shareAbove: 0.5 } }), ZONE, ENGLISH)).toHaveLength(1);
  });

  test('before a trial there is nothing to tell, and passed is said before met', () => {
    expect(gateSentences(progress({ work: null }), ZONE, ENGLISH)).toEqual([]);
    expect(gateMark(progress({ work: null }), ENGLISH)).toBe('');
    const passed = [{ stage: 'mound', trial: 'A', atMs, reason: null }] as const;
    expect(gateMark(progress({ passed, work: work({ state: { kind: 'met', comfortAlone: false, needs: [] } }) }), ENGLISH)).toBe('passed');
  });

  test('passed by the coach although it is not met says both, with the day it was said', () => {
    const passed = [{ stage: 'mound', trial: 'A', atMs, reason: null }] as const;
    expect(gateMark(progress({ passed }), ENGLISH)).toBe('passed by the coach, not met');
    expect(gateSentences(progress({ passed }), ZONE, ENGLISH).at(-1)).toBe('The coach passed it on Sep 21, 2026; as it stands now the gate is not met.');
    expect(gateSentences(progress({ passed }), ZONE, SPANISH).at(-1)).toMatch(/^El entrenador la dio por pasada el .*no está cumplida\.$/);
  });

  test('its history names every day and the passing with its reason', () => {
    const days = [{ day: '2026-09-19', throws: 6, hits: 0, judged: 0 }, { day: '2026-09-20', throws: 9, hits: 6, judged: 9 }];
    expect(gateHistory({ work: work({ days }), passed: [{ stage: 'mound', trial: 'B', atMs, reason: 'season begins' }] }, ZONE, ENGLISH)).toEqual([
      'Sep 19, 2026: 6 throws, none judged', 'Sep 20, 2026: 6 of 9 on target', 'Sep 21, 2026: passed as trial B (season begins)',
    ]);
  });
});

describe('one tap on', () => {
  const session = { id: 's', stage: 'mound', effort: 'full', trial: { letter: 'B', intent: 'changeup', grip: null, cue: null, count: 3, excluded: 0, seamEffect: { kind: 'too-few', count: 0, need: 5 } } } as const;
  test('says that the trial has passed, and then goes to the next stage from its usual distance', () => {
    expect(passing(session)).toEqual([
      { kind: 'gate-passed', session: 's', stage: 'mound', trial: 'B', reason: null },
      { kind: 'stage-set', session: 's', stage: 'hitters', distanceM: expect.closeTo(18.4404, 4), effort: 'full' },
    ]);
  });
  test('on the last stage only says that it was passed', () => expect(passing({ ...session, stage: 'hitters' })).toEqual([{ kind: 'gate-passed', session: 's', stage: 'hitters', trial: 'B', reason: null }]));
  test('a share is typed in percent; nothing asks for comfort alone, and 96 is too much', () => {
    expect([typedShare(50, false), typedShare(null, true), typedShare(96, false), typedShare(null, false)]).toEqual([
      { kind: 'share', above: 0.5 }, { kind: 'share', above: null }, { kind: 'wrong' }, { kind: 'wrong' },
    ]);
  });
});

describe('the evidence of the body', () => {
  const evidence = (more: Partial<BodyEvidence>): BodyEvidence => ({ measure: 'armSpeedMps', difference: mphToMps(-3), interval: { low: mphToMps(-4), high: mphToMps(-2.1) }, smallest: mphToMps(2), way: 'slowing', ...more });
  test('is a difference with its interval, in the viewer’s units', () => {
    expect(bodyWords(evidence({}), ENGLISH)).toBe('Arm speed: slower. −3.0 mph (−4.0 mph to −2.1 mph); it matters from 2.0 mph on.');
    expect(bodyWords(evidence({ measure: 'deliveryDurationS', difference: 0.012, interval: null, smallest: 0.05, way: 'cannot-tell' }), SPANISH)).toBe('Entrega: aún no se sabe. +12 ms (muy pocos tiros); importa desde 50 ms.');
  });
});

describe('the next-day set', () => {
  const before = { letter: 'B', day: '2026-09-20', hits: 9, judged: 10 };
  const offered: Extract<NextDaySet, { kind: 'offered' }> = { kind: 'offered', trial: { intent: 'changeup', grip: null, cue: { words: 'over', focus: null } }, because: 'found-better', before, throws: 10, resume: null };
  test('is offered with its reason', () => expect(offerWords(offered, ENGLISH)).toMatch(/^Trial B of Sep 20, 2026 was found better\. Practice is not learning/));
  test('begins with feedback off, and goes on with a trial that was begun already', () => {
    expect(startingSet('s', offered).map(({ kind }) => kind)).toEqual(['feedback-set', 'trial-begun']);
    expect(startingSet('s', { ...offered, resume: 'C' })[1]).toEqual({ kind: 'trial-resumed', session: 's', trial: 'C' });
  });
  test('is told beside practice with its interval, or as not judged', () => {
    const thrown = { kind: 'thrown', letter: 'A', throws: 7, hits: 6, judged: 7, before } as const;
    expect(thrownWords(thrown, ENGLISH).slice(0, 2)).toEqual(['Trial A, without feedback: 6 of 7 on target (Wilson interval 49 % to 97 %).', 'When last practised, Sep 20, 2026: 9 of 10.']);
    expect(thrownWords({ ...thrown, hits: 0, judged: 0 }, ENGLISH)[0]).toBe('Trial A, without feedback: 7 throws, none judged.');
  });
});

test('a baseline that was left is told with what has left it and by which rule', () => {
  const drift = { fastballs: 9, speedMps: mphToMps(-2.2), releaseHeightM: inchesToM(-3), releaseArmSideM: inchesToM(2.8) };
  expect(driftWords(drift, ENGLISH)).toEqual([
    'The fastball has sunk 2.2 mph below this baseline.',
    'It is released elsewhere: 3.0 in lower, 2.8 in to arm side.',
    'Separation gained from a tiring or lazy fastball is not separation.',
    'House rule: smoothed, 1.5 mph slower or 2.5 in elsewhere, three fastballs in a row.',
  ]);
});
