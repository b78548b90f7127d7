import { describe, expect, test } from 'vitest';
import { distanceText, millisecondsText, movementText, numberText, readingText, shareText, speedText, spinText, tiltText } from '../../web/words/numbers.ts';
import { speechIn } from '../../web/words/speech.ts';

const ENGLISH = speechIn('en', 'imperial');
const METRIC = speechIn('es', 'metric');

describe('a number never stands without its unit', () => {
  test('movement is said in inches or centimetres', () => {
    expect(movementText(0.254, ENGLISH)).toBe('10.0 in');
    expect(movementText(0.254, METRIC)).toBe('25 cm');
  });

  test('speed is said in miles or kilometres an hour', () => {
    expect(speedText(44.704, ENGLISH)).toBe('100.0 mph');
    expect(speedText(40, METRIC)).toBe('144.0 km/h');
  });

  test('distance is said in feet or metres', () => {
    expect(distanceText(18.4404, ENGLISH)).toBe('60.5 ft');
    expect(distanceText(18.4404, METRIC)).toBe('18.44 m');
  });

  test('spin is said to the ten, times to the millisecond, shares to the percent', () => {
    expect(spinText(2314, ENGLISH)).toBe('2,310 rpm');
    expect(millisecondsText(0.0524, ENGLISH)).toBe('52 ms');
    expect(shareText(0.934, ENGLISH)).toBe('93 %');
  });
});

describe('a minus', () => {
  test('is a minus sign, never a hyphen', () => {
    expect(numberText(-3.25, 1, 'en')).toMatch(/^−3\.[23]$/);
  });

  test('never stands before nothing', () => {
    expect(numberText(-0.04, 1, 'en')).toBe('0.0');
  });
});

describe('tilt reads like a clock seen by the pitcher', () => {
  test.each([
    [0, '12:00'], [2 * Math.PI, '12:00'], [Math.PI / 2, '3:00'], [Math.PI, '6:00'], [(1.5 / 12) * 2 * Math.PI, '1:30'], [(11.75 / 12) * 2 * Math.PI, '11:45'], [2 * Math.PI - 0.001, '12:00'],
  ])('%f radians are %s', (tiltRad, said) => {
    expect(tiltText(tiltRad)).toBe(said);
  });
});

test('what is not known is said, never drawn as zero', () => {
  const say = (value: number): string => String(value);
  expect(readingText('not-visible', say, ENGLISH)).toBe('not visible to this device');
  expect(readingText('not-defined', say, METRIC)).toBe('aquí no se define');
  expect(readingText(0, say, ENGLISH)).toBe('0');
});
