import { describe, expect, it } from 'vitest';
import { fatigueSign, NO_SPEEDS, withSpeed } from '../../../core/coaching/fatigue.ts';

const signOf = (speedsMps: readonly number[]) => fatigueSign(speedsMps.reduce(withSpeed, NO_SPEEDS));
const first = Array.from({ length: 15 }, (_, index) => 40 + (index % 3) * 0.1 - 0.1);
const then = (...shares: readonly number[]) => signOf([...first, ...shares.map((share) => 40 * (1 + share))]);

describe('what fastball speed asks', () => {
  it('is nothing before the sixteenth fastball', () => {
    expect(signOf([])).toEqual({ kind: 'forming', have: 0, need: 15 });
    expect(signOf(first)).toEqual({ kind: 'forming', have: 15, need: 15 });
  });

  it('is nothing while speed holds, which is no word about the arm', () => {
    const sign = then(0.01, -0.01, 0, 0.01);
    expect(sign.kind).toBe('no-speed-sign');
  });

  it('is a question to the pitcher when the smoothed speed is 2 % down for three throws', () => {
    // At 3 % down the average goes −0.90, −1.53, −1.97, −2.28, −2.50, −2.65 %: below 2 % at the fourth, for three throws at the sixth.
    const slower = (count: number) => then(...Array.from({ length: count }, () => -0.03));
    expect([3, 4, 5, 6].map((count) => slower(count).kind)).toEqual(['no-speed-sign', 'no-speed-sign', 'no-speed-sign', 'ask-the-pitcher']);
    expect(slower(6)).toMatchObject({ change: expect.closeTo(-0.03 * (1 - 0.7 ** 6), 5) });
  });

  it('is whether to end the session at 4 % down', () => {
    expect(then(...Array.from({ length: 10 }, () => -0.05))).toMatchObject({ kind: 'ask-to-end' });
    expect(then(...Array.from({ length: 10 }, () => -0.035)).kind).toBe('ask-the-pitcher');
  });

  it('is not started by one slow fastball', () => {
    expect(then(0, 0, -0.08).kind).toBe('no-speed-sign');
  });

  it('is held against this athlete’s own first fifteen, whatever they were', () => {
    const slow = (metres: number) => signOf([...first, ...Array.from({ length: 6 }, () => 38.5)].map((speed) => speed * metres));
    const [one, other] = [slow(1), slow(0.7)];
    expect(one.kind).toBe(other.kind);
    expect('change' in one && 'change' in other && one.change).toBeCloseTo('change' in other ? other.change : 0, 12);
  });
});
