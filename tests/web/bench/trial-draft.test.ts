import { describe, expect, test } from 'vitest';
import { PLAIN_GRIP } from '../../../core/coaching/starting-grip.ts';
import type { Grip } from '../../../core/facts/coach.ts';
import type { SessionView, TrialView } from '../../../core/facts/views.ts';
import { letterOf } from '../../../core/session/letter.ts';
import { cueOf, draftToStart, familiesOf, familySaid } from '../../../web/bench/trial/draft.ts';
import { gripWords, trialWords } from '../../../web/grip/grip-words.ts';
import { WORDS } from '../../../web/words/language.ts';

const GRIP: Grip = { seams: 'one-seam', spread: 'wide', thumbDeg: -15, pressure: 'ring', depth: 'deep', tiltDeg: 10 };
const trial = (letter: string, part: Partial<TrialView> = {}): TrialView => ({ letter, intent: 'changeup', grip: null, cue: null, count: 0, excluded: 0, seamEffect: { kind: 'too-few', count: 0, need: 5 }, ...part });
const session = (part: Partial<SessionView>): SessionView => ({ athlete: { mainFastball: 'sinker' }, intent: null, trial: null, trials: [], ...part }) as SessionView;

describe('the next trial', () => {
  test('carries grip and cue over from the trial that is being thrown, not from the newest', () => {
    const a = trial('A', { grip: GRIP, cue: { words: 'through the mitt', focus: 'external' } });
    expect(draftToStart(session({ trials: [a, trial('B')], trial: a }))).toEqual({ intent: 'changeup', grip: GRIP, cueWords: 'through the mitt', focus: 'external', family: null });
  });

  test('is of the intent that was said, unless that is the athlete’s fastball', () => {
    expect(draftToStart(session({ intent: 'split' })).intent).toBe('split');
    expect(draftToStart(session({ intent: 'sinker' })).intent).toBe('changeup');
    expect(draftToStart(session({ intent: 'four-seam' })).intent).toBe('four-seam');
  });

  test('has no cue when no words were said', () => {
    expect(cueOf({ intent: 'split', grip: null, cueWords: '  ', focus: 'internal', family: null })).toBeNull();
    expect(cueOf({ intent: 'split', grip: null, cueWords: ' loose wrist ', focus: null, family: null })).toEqual({ words: 'loose wrist', focus: null });
  });

  test('says a family only where one was chosen that is thrown with that intent', () => {
    const draft = { intent: 'changeup', grip: null, cueWords: '', focus: null, family: 'seam-effect' } as const;
    expect(familySaid(draft)).toEqual({ family: 'seam-effect' });
    expect(familySaid({ ...draft, family: null })).toEqual({});
    expect(familySaid({ ...draft, intent: 'split' })).toEqual({});
    expect(familiesOf('changeup')).toEqual(['turnover', 'seam-effect']);
    expect(familiesOf('curve')).toEqual([]);
  });

  test('carries its family over', () => {
    expect(draftToStart(session({ trials: [trial('A', { family: 'turnover' })] })).family).toBe('turnover');
  });

  test('gets the letter that the session will give it', () => {
    expect([0, 1, 25, 26, 27, 52].map(letterOf)).toEqual(['A', 'B', 'Z', 'AA', 'AB', 'BA']);
  });
});

describe('a grip in words', () => {
  test('leaves out what is usual', () => {
    expect(gripWords(PLAIN_GRIP, WORDS.en)).toBe('two-seam, fingers normal');
    expect(gripWords(null, WORDS.es)).toBe('Agarre sin decir');
  });

  test('says sides as arm and glove side, never left and right', () => {
    expect(gripWords(GRIP, WORDS.en)).toBe('one-seam, fingers wide, thumb 15° to glove side, ring finger presses, deep in the hand, ball tilted 10° to arm side');
    expect(trialWords({ grip: GRIP, cue: { words: 'afloja', focus: null } }, WORDS.es)).toBe('una costura, dedos: abiertos, pulgar 15° al lado del guante, presiona el anular, hondo en la mano, bola inclinada 10° al lado del brazo. «afloja»');
  });
});
