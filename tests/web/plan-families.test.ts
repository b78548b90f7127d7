import { describe, expect, test } from 'vitest';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import { seamEffectVisible } from '../../core/session/family-evidence.ts';
import { mayAdvise } from '../../web/plan/care.ts';
import { evidenceOf, familyToOpen, type PlanEvidence } from '../../web/plan/evidence.ts';
import { answerWords, changeWords, efficiencyWords, fitWords, ownReasons, sharedWords } from '../../web/plan/reason-words.ts';
import { speechIn } from '../../web/words/speech.ts';
import { FASTBALLS, formingMound, InventedMound, RIGHT_HANDER, TRIAL_A } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const SESSION = `${RIGHT_HANDER.id}-today`;

const fresh = (mound = new InventedMound()): InventedMound => mound.open(RIGHT_HANDER).say({ kind: 'intent-set', session: SESSION, intent: 'four-seam' }).throws(...FASTBALLS);
const evidence = (view: MoundView): PlanEvidence => evidenceOf(view, view.session!);
/** The same mound with fastballs of these efficiencies. */
const withEfficiency = (view: MoundView, efficiencies: readonly number[]): MoundView => ({ ...view, throws: view.throws.map((thrown, index) => ({ ...thrown, efficiency: efficiencies[index]! })) });
const reasonsOf = ({ advice }: PlanEvidence, family: string) => ownReasons(advice.ranking.find((fit) => fit.family === family)!, advice, ENGLISH);

describe('the families on Plan', () => {
  test('a fastball of 97 % leads with the turnover, and says what favours it and what speaks against a seam effect', () => {
    const found = evidence(withEfficiency(fresh().view(), [0.97, 0.972, 0.968, 0.971, 0.969]));
    expect(answerWords(found.advice, ENGLISH)).toBe('Turnover first');
    expect(efficiencyWords(found.efficiency, ENGLISH)).toBe('97 % (97 to 97)');
    expect(reasonsOf(found, 'turnover')).toContainEqual({ weighs: 'for', words: 'fastball efficiency of 97 % favours it' });
    expect(reasonsOf(found, 'seam-effect')).toContainEqual({ weighs: 'against', words: 'fastball efficiency of 97 % speaks against it' });
    expect(reasonsOf(found, 'split')).toEqual([{ weighs: 'against', words: 'scatters most, so it takes the most throws' }]);
  });

  test('a fastball about the middle of the marks has all three tried, in an order', () => {
    const found = evidence(withEfficiency(fresh().view(), [0.87, 0.875, 0.88, 0.873, 0.877]));
    expect(answerWords(found.advice, ENGLISH)).toBe('Try all three, in this order');
    expect(answerWords(found.advice, SPANISH)).toBe('Pruebe las tres, en este orden');
    expect(new Set(found.advice.ranking.map(({ family }) => family)).size).toBe(3);
  });

  test('an interval that straddles 95 % is said once, of all three, and more fastballs would change the answer', () => {
    const found = evidence(withEfficiency(fresh().view(), [0.965, 0.94, 0.93, 0.955, 0.97]));
    expect(efficiencyWords(found.efficiency, ENGLISH)).toBe('95 % (93 to 97)');
    expect(sharedWords(found.advice, ENGLISH)).toContain('The interval straddles 95 %: more fastballs may move the order.');
    for (const { family } of found.advice.ranking) expect(reasonsOf(found, family).some(({ words }) => words.includes('straddles'))).toBe(false);
    expect(changeWords(found.advice.wouldChange, true, ENGLISH)).toContain('More fastballs: the interval of efficiency narrows.');
  });

  test('an efficiency that a device worked out from something else is called inferred', () => {
    expect(evidence(fresh().view()).efficiencyInferred).toBe(false);
    expect(evidence(fresh(new InventedMound().spinOnly()).view()).efficiencyInferred).toBe(true);
  });

  test('an excluded fastball says nothing about efficiency', () => {
    const mound = fresh();
    const [first] = mound.view().throws;
    expect(evidence(mound.view()).efficiency).toMatchObject({ kind: 'known', count: 5 });
    expect(evidence(mound.say({ kind: 'throws-excluded', session: SESSION, places: [first!.place], reason: 'misread' }).view()).efficiency).toMatchObject({ count: 4 });
  });

  test('throws of a trial that was begun as a turnover weigh for the turnover, and open the screen with it', () => {
    const mound = fresh().say({ kind: 'zone-set', session: SESSION, zone: { kind: 'ellipse', verticalM: -0.13, armSideM: 0.08, verticalRadiusM: 0.06, armSideRadiusM: 0.06 }, speedBand: null, reason: null });
    const before = evidence(mound.view()).advice.ranking.find(({ family }) => family === 'turnover')!.degree;
    mound.say({ kind: 'trial-begun', session: SESSION, intent: 'changeup', grip: null, cue: null, family: 'turnover' }).throws(...TRIAL_A);
    const found = evidence(mound.view());
    expect(reasonsOf(found, 'turnover')).toContainEqual({ weighs: 'for', words: 'near the target so far, 5 throws' });
    expect(found.advice.ranking.find(({ family }) => family === 'turnover')!.degree).toBeGreaterThan(before);
    expect(familyToOpen(found.advice, { trial: { family: 'split' } } as unknown as SessionView)).toBe('split');
  });

  test.each([['en', 'not visible to this device'], ['es', 'este equipo no lo ve']] as const)('to a spin-only device a seam effect is not visible, in %s', (language, words) => {
    const view = fresh(new InventedMound().spinOnly()).view();
    const { advice } = evidence(view);
    expect(seamEffectVisible(view)).toBe(false);
    expect(ownReasons(advice.ranking.find(({ family }) => family === 'seam-effect')!, advice, speechIn(language, 'imperial'))).toContainEqual({ weighs: 'note', words });
    expect(advice.wouldChange).toContainEqual({ code: 'see-the-flight' });
  });

  test('nor is it to one that sees the flight but measures no axis', () => {
    const view = fresh().view();
    expect(seamEffectVisible(view)).toBe(true);
    expect(seamEffectVisible({ ...view, source: { ...view.source!, axis: 'inferred' } })).toBe(false);
  });

  test('before a fastball the efficiency is not known, and says how many tell it', () => {
    const { efficiency } = evidence(new InventedMound().open(RIGHT_HANDER).view());
    expect(efficiencyWords(efficiency, ENGLISH)).toBe('three fastballs of today tell it');
  });

  test('fastballs of which the movement is not known say why', () => {
    const view = formingMound().view();
    expect(evidence(view).noMovement).toBeNull();
    expect(evidence({ ...view, throws: view.throws.map((thrown) => ({ ...thrown, verticalM: 'not-visible' as const })) }).noMovement).toBe('not-visible');
  });

  test('a degree is said in words that follow it', () => {
    expect([0.9, 0.5, 0.2].map((degree) => fitWords(degree, ENGLISH))).toEqual(['fits well', 'may fit', 'fits less']);
  });
});

describe('what an arm forbids', () => {
  test('throws are advised until pain is reported, and again never by themselves', () => {
    const mound = fresh();
    expect(mayAdvise(mound.view().session!.armCare)).toBe('throw');
    mound.say({ kind: 'arm-reported', session: SESSION, from: 'glance', said: 'pain', areas: ['elbow'] });
    expect(mayAdvise(mound.view().session!.armCare)).toBe('nothing');
    expect(mayAdvise(mound.throws(FASTBALLS[0]!).view().session!.armCare)).toBe('nothing');
  });

  test('soreness stops advice too, and a day’s most only the throwing', () => {
    expect(mayAdvise(fresh().say({ kind: 'arm-reported', session: SESSION, from: 'bench', said: 'sore', areas: ['shoulder'] }).view().session!.armCare)).toBe('nothing');
    const { armCare } = fresh().view().session!;
    expect(mayAdvise({ ...armCare, kind: 'reached', earliestNextDay: null })).toBe('plan');
  });

  test('where no throw may be advised, nothing that would change the answer is a throw', () => {
    const { advice } = evidence(withEfficiency(fresh().view(), [0.965, 0.94, 0.93, 0.955, 0.97]));
    expect(changeWords(advice.wouldChange, true, ENGLISH).join(' ')).toContain('Throws in trials: 15 of Turnover');
    expect(changeWords(advice.wouldChange, false, ENGLISH)).toEqual([]);
  });
});
