import { describe, expect, test } from 'vitest';
import { routeOf } from '../../web/route.ts';
import { settingsIn, withSetting } from '../../web/settings.ts';
import { chooseLanguage } from '../../web/words/language.ts';
import { dateText, hourText, lengthText, momentText, timeText } from '../../web/words/moments.ts';

describe('an address', () => {
  test('names a screen and its mound', () => {
    expect(routeOf('/wall/north-1')).toEqual({ screen: 'wall', mound: 'north-1' });
    expect(routeOf('/plan/north-1')).toEqual({ screen: 'plan', mound: 'north-1' });
  });
  test('names a recorded session, or the list of them', () => {
    expect(routeOf('/playback/abc')).toEqual({ screen: 'playback', session: 'abc' });
    expect(routeOf('/playback')).toEqual({ screen: 'playback', session: null });
  });
  test('alone is the start', () => expect(routeOf('/')).toEqual({ screen: 'start' }));
  test.each(['open', 'sign-in', 'certificate', 'let-in'] as const)('/%s is the door', (screen) => expect(routeOf(`/${screen}`)).toEqual({ screen }));
  test('may lead to where recorded throws come in', () => expect(routeOf('/import')).toEqual({ screen: 'import' }));
  test.each(['/wall', '/open/x', '/wall/a/b', '/other', '/%E0%A4%A'])('%s belongs to no screen', (pathname) => {
    expect(routeOf(pathname)).toEqual({ screen: 'nowhere', pathname });
  });

  test('carries the settings of its viewer', () => {
    expect(settingsIn('?lang=es&units=metric&theme=sun&hand=left&diagonal=65&distance=8&windows=1&panel=notes&session=s-1&picture=seam-map')).toEqual({ language: 'es', units: 'metric', theme: 'sun', hand: 'left', diagonalIn: 65, distanceM: 8, windows: true, panel: 'notes', session: 's-1', picture: 'seam-map' });
  });
  test('with settings that make no sense leaves them to the screen', () => {
    expect(settingsIn('?lang=fr&units=ells&theme=pink&hand=both&diagonal=0&distance=far&picture=cat&panel=cat')).toEqual({ language: null, units: null, theme: null, hand: null, diagonalIn: null, distanceM: null, windows: false, panel: null, session: null, picture: null });
  });
  test('keeps its other settings when one changes', () => {
    expect(withSetting('?lang=es', 'windows', '1')).toBe('?lang=es&windows=1');
    expect(withSetting('?windows=1', 'windows', null)).toBe('');
  });
});

describe('the language', () => {
  test("is what the address asks for, then the athlete's, then the browser's, then English", () => {
    expect(chooseLanguage('en', 'es', ['es-MX'])).toBe('en');
    expect(chooseLanguage(null, 'es', ['en-US'])).toBe('es');
    expect(chooseLanguage(null, null, ['fr-FR', 'es-MX', 'en'])).toBe('es');
    expect(chooseLanguage(null, null, ['fr-FR'])).toBe('en');
  });
});

describe('times', () => {
  // 2026-09-21 14:13:20 UTC.
  const AT = 1_790_000_000_000;
  test('are those of the place where the session was thrown', () => {
    expect(timeText(AT, 'America/New_York', 'en')).toBe('10:13:20');
    expect(hourText(AT, 'Europe/Madrid', 'es')).toBe('16:13');
    expect(dateText(AT, 'Asia/Tokyo', 'en')).toBe('Sep 21, 2026');
  });
  test('that stand alone tell how far their zone is from UTC', () => expect(momentText(AT, 'America/New_York', 'en')).toBe('Sep 21, 2026, 10:13 −04:00'));
  test('midnight is 00, never 24', () => expect(timeText(AT - (14 * 3600 + 13 * 60 + 20) * 1000, 'UTC', 'en')).toBe('00:00:00'));
  test('a length is minutes and seconds', () => expect(lengthText(75.4)).toBe('1:15'));
});
