import { describe, expect, it } from 'vitest';
import { gripAndTimeMixed, nextBlock } from '../../../core/coaching/blocks.ts';
import { armThatMayThrow } from './arm-states.ts';

const next = (thrown: string, left = 30) => nextBlock(armThatMayThrow(0, left), [...thrown], ['A', 'B']);

describe('the next block', () => {
  it('begins with five of A', () => {
    expect(next('')).toEqual({ trial: 'A', throws: 5, goesOn: false });
  });

  it('goes on until five are thrown, and is then offered of the other trial', () => {
    expect(next('AAA')).toEqual({ trial: 'A', throws: 2, goesOn: true });
    expect(next('AAAAA')).toEqual({ trial: 'B', throws: 5, goesOn: false });
    expect(next('AAAAAB')).toEqual({ trial: 'B', throws: 4, goesOn: true });
    expect(next('AAAAABBBBB')).toEqual({ trial: 'A', throws: 5, goesOn: false });
  });

  it('after more than five of one is of the other all the same', () => {
    expect(next('AAAAAAAA')).toEqual({ trial: 'B', throws: 5, goesOn: false });
  });

  it('leads over thirty throws through A B A B A B', () => {
    let thrown = '';
    while (thrown.length < 30) thrown += next(thrown)!.trial;
    expect(thrown).toBe('AAAAABBBBB'.repeat(3));
  });

  it('is never longer than what is left of the day, and there is none when nothing is left', () => {
    expect(next('AAAAA', 3)).toEqual({ trial: 'B', throws: 3, goesOn: false });
    expect(next('A', 2)).toEqual({ trial: 'A', throws: 2, goesOn: true });
    expect(next('AAAAA', 0)).toBeNull();
  });
});

describe('grip and time', () => {
  it('are mixed when all of one trial came before all of the other', () => {
    expect(gripAndTimeMixed([...'AAAAABBBBB'])).toBe(true);
    expect(gripAndTimeMixed([...'BA'])).toBe(true);
  });

  it('are told apart by coming back to the first', () => {
    expect(gripAndTimeMixed([...'AAAAABBBBBAAAAA'])).toBe(false);
  });

  it('are no question while only one trial was thrown', () => {
    expect(gripAndTimeMixed([])).toBe(false);
    expect(gripAndTimeMixed([...'AAAA'])).toBe(false);
  });
});
