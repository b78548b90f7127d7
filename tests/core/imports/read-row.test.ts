import { describe, expect, test } from 'vitest';
import { rowReader } from '../../../core/imports/read-row.ts';
import { ABLE, CHOICES, layoutOf, PENA } from './choices.ts';

const bodyOf = (layout: ReturnType<typeof layoutOf>, cells: readonly unknown[], choices = CHOICES): unknown => {
  const read = rowReader(layout, choices)(cells);
  return read.kind === 'read' ? read.body : read.sentence;
};

describe('a row of a file', () => {
  test('becomes the throw that a device would have sent, in the units that the file has', () => {
    const layout = layoutOf([['releaseSpeed', 'mph'], ['spinRate', 'rpm'], ['tilt', 'clock'], ['efficiency', 'percent'], ['verticalBreak', 'in'], ['horizontalBreak', 'in', 'right'], ['flightTime', 'ms']]);
    const read = rowReader(layout, CHOICES)(['88.1', '2210', '1:15', '96', '16.2', '-7.4', '412']);
    expect(read).toMatchObject({
      kind: 'read', athlete: ABLE, mound: 'north-1', units: { distance: 'ft', speed: 'mph', movement: 'in' }, moment: { kind: 'local', day: '2024-05-03', timeMs: null },
      body: { summary: { releaseSpeed: 88.1, verticalBreak: 16.2, horizontalBreak: -7.4, flightTime: 0.412 }, spin: { rate: 2210, tilt: 37.5, efficiency: 0.96 } },
    });
  });

  test('has its release where height, side and extension say it', () => {
    const layout = layoutOf([['releaseSpeed', 'm/s'], ['releaseHeight', 'm'], ['releaseSide', 'cm', 'right'], ['extension', 'm']]);
    expect(bodyOf(layout, ['35', '1.8', '-60', '1.9'])).toEqual({ summary: { releaseSpeed: 35, release: [-0.6, expect.closeTo(16.54, 9), 1.8] }, extension: 1.9 });
    // Without an extension nobody knows how far in front of the rubber that was.
    expect(bodyOf(layout, ['35', '1.8', '-60', ''])).toEqual({ summary: { releaseSpeed: 35 } });
  });

  test('in columns of different units comes in one', () => {
    const layout = layoutOf([['releaseSpeed', 'mph'], ['plateSpeed', 'km/h'], ['verticalBreak', 'in'], ['horizontalBreak', 'cm', 'right']]);
    expect(bodyOf(layout, ['80', '118', '8', '25.4'])).toEqual({ summary: { releaseSpeed: 80, plateSpeed: expect.closeTo(73.322, 3), verticalBreak: 8, horizontalBreak: expect.closeTo(10, 12) } });
  });

  test.each([['right', 'arm', -9], ['right', 'glove', 9], ['left', 'arm', 9], ['left', 'glove', -9], ['right', 'left', -9], ['left', 'right', 9]] as const)('of a %s-hander, positive to the %s, moves %d to the catcher’s right', (hand, towards, right) => {
    const layout = layoutOf([['releaseSpeed', 'mph'], ['horizontalBreak', 'in', towards]]);
    expect(bodyOf(layout, ['80', '9'], { ...CHOICES, athlete: { ...ABLE, hand } })).toEqual({ summary: { releaseSpeed: 80, horizontalBreak: right } });
  });

  test('is read with decimal commas, and with thousands set apart', () => {
    const layout = layoutOf([['releaseSpeed', 'km/h'], ['spinRate', 'rpm']], { decimal: ',' });
    expect(bodyOf(layout, ['126,9', '2.210'])).toEqual({ summary: { releaseSpeed: 126.9 }, spin: { rate: 2210 } });
  });

  test('names whose it is, in what session, and what was thrown in plain words', () => {
    const layout = layoutOf([['athlete'], ['session'], ['intent'], ['trial'], ['releaseSpeed', 'mph']]);
    const read = rowReader(layout, { ...CHOICES, athlete: null, athletes: { Peña: PENA }, intents: { 'slow one': 'changeup' } });
    expect(read(['Peña', '2', 'Cambio', 'soft wrist', '78'])).toMatchObject({ athlete: PENA, session: '2', intent: 'changeup', trial: 'soft wrist' });
    expect(read(['Peña', '', 'slow one', '', '78'])).toMatchObject({ session: '', intent: 'changeup', trial: '' });
    expect(read(['Peña', '', 'Four-Seam Fastball', '', '78'])).toMatchObject({ intent: 'four-seam' });
    expect(read(['Peña', '', 'zeta', '', '78'])).toMatchObject({ intent: null });
    expect(read(['Nobody', '', '', '', '78'])).toEqual({ kind: 'refused', stranger: 'Nobody', code: 'unknown-athlete', column: 'athlete', sentence: 'Nobody has said who "Nobody" is; choose the athlete for this name.' });
    expect(read(['constructor', '', '', '', '78'])).toMatchObject({ code: 'unknown-athlete' });
  });

  test.each([
    ['2024-05-03T17:05:10Z', 'year-first', { kind: 'absolute', atMs: Date.UTC(2024, 4, 3, 17, 5, 10) }],
    ['2024-05-03 17:05', 'year-first', { kind: 'local', day: '2024-05-03', timeMs: 61_500_000 }],
    ['3/5/2024, 5:05:10 PM', 'day-first', { kind: 'local', day: '2024-05-03', timeMs: 61_510_000 }],
    ['5/3/24', 'month-first', { kind: 'local', day: '2024-05-03', timeMs: null }],
    [1_714_756_000, 's', { kind: 'absolute', atMs: 1_714_756_000_000 }],
  ])('of %s was thrown then', (cell, unit, moment) => {
    expect(rowReader(layoutOf([['moment', unit], ['releaseSpeed', 'mph']]), CHOICES)([cell, '80'])).toMatchObject({ moment });
  });

  test.each([
    [['88,1', '1:15'], '"88,1" is not a number.'],
    [['', '1:15'], 'This line says no speed; a throw without one cannot be held against a fastball.'],
    [['88', '13:15'], '"13:15" is not a clock face such as 1:15.'],
    [['88', '1:15', 'more', 'more'], 'This line has 4 columns where the head of the file has 3; look for a separator too many or a quote that is not closed.'],
  ])('%j is refused in a sentence', (cells, sentence) => {
    expect(bodyOf(layoutOf([['releaseSpeed', 'mph'], ['tilt', 'clock'], ['spinRate', 'rpm']]), cells.length === 2 ? [...cells, '2000'] : cells)).toBe(sentence);
  });
});
