import { describe, expect, test } from 'vitest';
import type { BaselineView, MoundView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { aimOf } from '../../web/aims/aim-of.ts';
import { aimedPlate, clockOf } from '../../web/aims/aim-pictures.ts';
import { aimSentences, plateAimWords, sessionAimWords, tiltAimWords, withinWords } from '../../web/aims/aim-words.ts';
import { onClock } from '../../web/charts/tilt-clock.ts';
import { speechIn } from '../../web/words/speech.ts';
import { InventedMound, LEFT_HANDER, liveMound, RIGHT_HANDER, TRIAL_B } from './invented-mound.ts';

const ENGLISH = speechIn('en', 'imperial');
const SPANISH = speechIn('es', 'metric');
const GRIP = { intent: 'changeup', grip: null, cue: null } as const;

/** The invented session with one trial more, of a family. */
const aiming = (family: Family | null, athlete = RIGHT_HANDER): MoundView =>
  liveMound(athlete).say({ kind: 'trial-begun', session: `${athlete.id}-today`, ...GRIP, ...(family === null ? {} : { family }) }).throws(...TRIAL_B).view();
const aimIn = (view: MoundView, family: Family) => aimOf(view, view.session!, view.session!.baseline as BaselineView, family, view.session!.zone!, ENGLISH);

describe('the aim of a trial', () => {
  const view = aiming('turnover');

  test('by tilt is a time and half an hour about it, and counts the throws with that tilt', () => {
    const aim = aimIn(view, 'turnover');
    // 16.2 − 9.25 in up and 7.5 + 6.5 in to the arm side: 63.6°, which is 2:07; every throw was told as 60°.
    expect(tiltAimWords(aim.tilt, 'turnover', ENGLISH)).toBe('2:05 (1:35 to 2:35)');
    expect(withinWords(aim, aim.tiltsWithin, ENGLISH)).toBe('7 of 7 in trial C');
    expect(clockOf(aim, ENGLISH)!.tilts.every(({ within }) => within)).toBe(true);
    expect(aimSentences(aim, ENGLISH)[0]).toMatch(/^Tilt: along the movement .* house rule\.$/);
  });

  test('of a left-hander is on the other side of his own clock', () => {
    const left = aiming('turnover', LEFT_HANDER);
    expect(tiltAimWords(aimIn(left, 'turnover').tilt, 'turnover', ENGLISH)).toMatch(/^9:|^10:/);
    expect(aimedPlate(aimIn(left, 'turnover'), left.session!, SPANISH)!.armSideOn).toBe('right');
  });

  test('at the plate is said from the glove side to the arm side; a place that was not sent counts for nothing', () => {
    const aim = aimIn(view, 'turnover');
    expect(plateAimWords(aim.plate, ENGLISH)).toBe('14 in to 27 in high, 3 in glove side to 10 in arm side');
    expect(plateAimWords(aim.plate, SPANISH)).toBe('de 36 cm a 69 cm de alto, 8 cm lado del guante a 25 cm lado del brazo');
    expect(withinWords(aim, aim.placesWithin, ENGLISH)).toBeNull();
    expect(aimedPlate(aim, view.session!, ENGLISH)).toMatchObject({ armSideOn: 'left', aim: aim.plate, marks: [] });
  });

  test('of another family than the present trial’s counts none of its throws, and a seam effect is not aimed by tilt', () => {
    const aim = aimIn(view, 'seam-effect');
    expect([aim.letter, clockOf(aim, ENGLISH)]).toEqual([null, null]);
    expect(tiltAimWords(aim.tilt, 'seam-effect', ENGLISH)).toBe('none: tilt does not describe seam effect');
  });

  test('has no place at the plate where the stage has no plate', () => {
    const toss = liveMound().say({ kind: 'stage-set', session: view.session!.id, stage: 'catch-play', distanceM: 18.4, effort: 'easy' }).view();
    const aim = aimOf(toss, toss.session!, view.session!.baseline as BaselineView, 'split', view.session!.zone!, ENGLISH);
    expect([plateAimWords(aim.plate, ENGLISH), aimedPlate(aim, toss.session!, ENGLISH)]).toEqual(['no plate in this stage', null]);
  });

  test('stands on the report in one line, and not where nobody said a family', () => {
    expect(sessionAimWords(view.session!, ENGLISH)).toEqual(['Turnover, tilt 2:05 (1:35 to 2:35); at the plate 14 in to 27 in high, 3 in glove side to 10 in arm side']);
    expect(sessionAimWords(aiming(null).session!, ENGLISH)).toEqual([]);
    expect(sessionAimWords(new InventedMound().open(RIGHT_HANDER).view().session!, ENGLISH)).toEqual([]);
  });
});

test('the clock has 12 at the top and 3 on the right', () => {
  expect(onClock({ x: 10, y: 10 }, 0, 5)).toEqual([10, 5]);
  const [x, y] = onClock({ x: 10, y: 10 }, Math.PI / 2, 5);
  expect([x, y]).toEqual([15, expect.closeTo(10, 12)]);
});
