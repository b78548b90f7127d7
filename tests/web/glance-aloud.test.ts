import { describe, expect, test } from 'vitest';
import { aloudOf } from '../../web/glance/aloud/aloud-text.ts';
import { glanceShows } from '../../web/glance/shows.ts';
import { speechIn, type Units } from '../../web/words/speech.ts';
import { moundWith, ON_TARGET, session, SHORT } from './glance-mound.ts';
import { FASTBALLS, InventedMound, RIGHT_HANDER } from './invented-mound.ts';

function aloud(mound: InventedMound, { showSpeed = true, language = 'en', units = 'imperial' }: { showSpeed?: boolean; language?: 'en' | 'es'; units?: Units } = {}): string | null {
  const view = mound.view();
  return aloudOf(glanceShows(view, view.session!), view.session!, showSpeed, speechIn(language, units))?.text ?? null;
}

describe('what Glance reads aloud', () => {
  test('is the throw that it shows, with its units in full', () => {
    expect(aloud(moundWith({ kind: 'every-throw' }).throws(ON_TARGET))).toMatch(/^On target\. Against your fastball: \d+ inches down, \d+ inches arm side, \d+ miles per hour slower\.$/);
    expect(aloud(moundWith({ kind: 'every-throw' }).throws(SHORT))).toMatch(/^\d+ inches short, glove side\. Against your fastball: /);
    expect(aloud(moundWith({ kind: 'every-throw' }).throws(SHORT), { language: 'es', units: 'metric' })).toMatch(/^\d+ centímetros corto, lado del guante\. Frente a tu recta: .* kilómetros por hora más lento\.$/);
  });

  test('holds no speed where none is shown', () => {
    for (const shown of [ON_TARGET, SHORT]) expect(aloud(moundWith({ kind: 'every-throw' }).throws(shown), { showSpeed: false })).not.toMatch(/mph|miles|slower|faster|pace/);
    expect(aloud(moundWith({ kind: 'every-throw' }).say({ kind: 'intent-set', session, intent: 'four-seam' }).throws(FASTBALLS[0]!), { showSpeed: false })).not.toMatch(/\d+(\.\d)? miles/);
  });

  test('is nothing that the mode withholds', () => {
    expect(aloud(moundWith({ kind: 'outside-band' }).throws(ON_TARGET))).toBeNull();
    expect(aloud(moundWith({ kind: 'summary', after: 3 }).throws(SHORT))).toBeNull();
    expect(aloud(moundWith({ kind: 'none' }).throws(SHORT))).toBeNull();
    const fading = moundWith({ kind: 'fading' });
    for (let each = 0; each < 11; each += 1) fading.throws(SHORT);
    expect(aloud(fading)).toBeNull();
    expect(aloud(new InventedMound().open(RIGHT_HANDER))).toBeNull();
  });

  test('is the question first, where the athlete says first', () => {
    expect(aloud(moundWith({ kind: 'every-throw' }, true).throws(SHORT))).toBe('Where did it go?');
  });

  test('is a summary with each of its throws', () => {
    expect(aloud(moundWith({ kind: 'summary', after: 3 }).throws(ON_TARGET, SHORT, ON_TARGET))).toMatch(/^2 of 3 on target\. On target\. \d+ inches short, glove side\. On target\.$/);
  });

  test('is not the arm: pain is shown, and nobody else need hear of it', () => {
    expect(aloud(moundWith({ kind: 'every-throw' }).throws(SHORT).say({ kind: 'arm-reported', session, from: 'glance', said: 'pain', areas: ['elbow'] }))).toBeNull();
  });
});
