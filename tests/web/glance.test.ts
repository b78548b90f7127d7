import { describe, expect, test } from 'vitest';
import type { FeedbackMode } from '../../core/facts/feedback-says.ts';
import { guessWords, movedCells, movedWords, wentCells, wentWords } from '../../web/glance/tap-field.ts';
import { glanceShows } from '../../web/glance/shows.ts';
import { basisWords, modeLine } from '../../web/words/feedback-words.ts';
import { WORDS } from '../../web/words/language.ts';
import { moundWith, ON_TARGET, session, SHORT } from './glance-mound.ts';
import { FASTBALLS, InventedMound, RIGHT_HANDER } from './invented-mound.ts';

function shown(mound: InventedMound) {
  const view = mound.view();
  return glanceShows(view, view.session!);
}

describe('what Glance shows', () => {
  test('is every throw, when the coach wants that', () => {
    expect(shown(moundWith({ kind: 'every-throw' }).throws(SHORT))).toMatchObject({ kind: 'throw', thrown: { miss: { onTarget: false } } });
    expect(shown(moundWith({ kind: 'every-throw' }).throws(ON_TARGET))).toMatchObject({ kind: 'throw', thrown: { miss: { onTarget: true } } });
  });

  test('is nothing inside the zone and the throw outside of it, when silence means good', () => {
    const mound = moundWith({ kind: 'outside-band' }).throws(ON_TARGET);
    expect(shown(mound)).toEqual({ kind: 'quiet-good' });
    expect(shown(mound.throws(SHORT))).toMatchObject({ kind: 'throw', thrown: { miss: { onTarget: false } } });
  });

  test('waits for the third throw and then sums up all three', () => {
    const mound = moundWith({ kind: 'summary', after: 3 }).throws(ON_TARGET);
    expect(shown(mound)).toEqual({ kind: 'waits', more: 2 });
    expect(shown(mound.throws(SHORT))).toEqual({ kind: 'waits', more: 1 });
    expect(shown(mound.throws(ON_TARGET))).toMatchObject({ kind: 'summary', onTarget: 2, judged: 3, throws: [{ number: 6 }, { number: 7 }, { number: 8 }] });
  });

  test('fades from every throw to every second', () => {
    const mound = moundWith({ kind: 'fading' });
    for (let thrown = 1; thrown <= 10; thrown += 1) expect(shown(mound.throws(SHORT)).kind).toBe('throw');
    expect(shown(mound.throws(SHORT))).toEqual({ kind: 'waits', more: 1 });
    expect(shown(mound.throws(SHORT)).kind).toBe('throw');
  });

  test('asks first where the coach wants the athlete to say first, and shows the throw once that was said', () => {
    const mound = moundWith({ kind: 'every-throw' }, true).throws(SHORT);
    const place = mound.view().throws.at(-1)!.place;
    expect(shown(mound)).toMatchObject({ kind: 'ask-first', thrown: { place } });
    expect(shown(mound.say({ kind: 'throw-guessed', session, place, went: null, moved: null }))).toMatchObject({ kind: 'throw', thrown: { place } });
  });

  test('is nothing at all in a set without feedback, fastballs and all', () => {
    expect(shown(moundWith({ kind: 'none' }).throws(SHORT))).toEqual({ kind: 'no-feedback' });
    expect(shown(moundWith({ kind: 'none' }).say({ kind: 'intent-set', session, intent: 'four-seam' }).throws(FASTBALLS[0]!))).toEqual({ kind: 'no-feedback' });
  });

  test('is a fastball as soon as it is thrown, whatever is waited for', () => {
    const mound = moundWith({ kind: 'summary', after: 5 }).throws(SHORT).say({ kind: 'intent-set', session, intent: 'four-seam' }).throws(FASTBALLS[0]!);
    expect(shown(mound)).toMatchObject({ kind: 'throw', thrown: { fastball: true } });
  });

  test('begins anew when the coach changes the mode', () => {
    const mound = moundWith({ kind: 'every-throw' }).throws(SHORT).say({ kind: 'feedback-set', session, mode: { kind: 'outside-band' }, askFirst: false });
    expect(shown(mound)).toEqual({ kind: 'ready', first: false });
    expect(shown(new InventedMound().open(RIGHT_HANDER))).toEqual({ kind: 'ready', first: true });
  });

  test('is the pain that was reported, instead of any throw, until it is answered', () => {
    const mound = moundWith({ kind: 'every-throw' }).throws(SHORT).say({ kind: 'arm-reported', session, from: 'glance', said: 'numb', areas: [] });
    expect(shown(mound)).toMatchObject({ kind: 'pain', report: { said: 'numb' } });
    expect(shown(mound.throws(SHORT)).kind).toBe('pain');
    expect(shown(mound.say({ kind: 'pain-answered', session, answer: 'professional-looked', words: 'Dr. Amari' })).kind).toBe('throw');
  });
});

describe('the line about feedback', () => {
  const line = (mode: FeedbackMode, askFirst = false, language: 'en' | 'es' = 'en') => {
    const { feedback } = moundWith(mode, askFirst).view().session!;
    return `${modeLine(feedback, WORDS[language])} ${basisWords(feedback, WORDS[language])}`;
  };

  test('says the mode, why, where that comes from and how sure it is', () => {
    expect(line({ kind: 'every-throw' })).toBe('Feedback: every throw. It helps while it is there, and can be leaned on (Schmidt 1989, Winstein 1990; old, small laboratory tasks).');
    expect(line({ kind: 'summary', after: 5 }, true)).toBe('Feedback: summary after 5. You say first, then the numbers come. Fewer words look worse in practice and better later (Schmidt 1989, Winstein 1990; old, small laboratory tasks).');
  });

  test('says that silence means good only where it does', () => {
    expect(line({ kind: 'outside-band' })).toContain('Silence means good.');
    expect(line({ kind: 'outside-band' }, false, 'es')).toContain('El silencio es buena señal.');
    for (const kind of ['every-throw', 'fading', 'none'] as const) expect(line({ kind })).not.toContain('Silence');
  });
});

describe('the field on which an athlete taps where a throw went', () => {
  test("is seen from the mound: a right-hander's arm side lies to the right, a left-hander's to the left", () => {
    expect(wentCells('right').map((cell) => wentWords(cell, WORDS.en))).toEqual([
      'High, glove side', 'High', 'High, arm side', 'Middle, glove side', 'Middle', 'Middle, arm side', 'Low, glove side', 'Low', 'Low, arm side',
    ]);
    expect(wentCells('left')[0]).toEqual({ height: 'up', side: 'arm-side' });
    expect(movedCells('left').map(({ side }) => side).slice(0, 3)).toEqual(['arm-side', 'on-target', 'glove-side']);
  });

  test('is said back beside the numbers, as far as something was said', () => {
    expect(guessWords({ went: { height: 'down', side: 'arm-side' }, moved: { vertical: 'above', side: 'on-target' } }, WORDS.en)).toBe('You said: low, arm side; above.');
    expect(guessWords({ went: null, moved: { vertical: 'on-target', side: 'glove-side' } }, WORDS.es)).toBe('Dijiste: lado del guante.');
    expect(guessWords({ went: null, moved: null }, WORDS.en)).toBeNull();
    expect(guessWords(null, WORDS.en)).toBeNull();
  });

  test('names every movement once, in both languages', () => {
    expect(movedCells('right').map((cell) => movedWords(cell, WORDS.en))).toEqual([
      'Above, glove side', 'Above', 'Above, arm side', 'Glove side', 'On target', 'Arm side', 'Below, glove side', 'Below', 'Below, arm side',
    ]);
    expect(new Set(movedCells('right').map((cell) => movedWords(cell, WORDS.es))).size).toBe(9);
  });
});
