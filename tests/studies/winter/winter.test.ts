import { describe, expect, it } from 'vitest';
import { FAMILIES } from '../../../core/facts/vocabulary.ts';
import { randomFrom } from '../../../simulators/random.ts';
import { drawnAthlete } from '../../../studies/winter/drawn-athlete.ts';
import { changed, NO_CHANGE } from '../../../studies/winter/hand.ts';
import { WINTER } from '../../../studies/winter/parameters.ts';
import { meanBreak, trueMiss } from '../../../studies/winter/true-miss.ts';
import { playAlike, playWinter } from '../../../studies/winter/winter.ts';

/** A small sample of what `npm run study` does with a thousand. */
describe('the winters of two athletes', () => {
  const winters = [playWinter(7, 0), playWinter(7, 1)];

  it('come again from their seed, and differ from athlete to athlete', () => {
    expect(playWinter(7, 0)).toEqual(winters[0]);
    expect(winters[1]!.advised.missAtEnd).not.toBe(winters[0]!.advised.missAtEnd);
  });

  it('stay within the budget, and try at least one grip each', () => {
    for (const { advised, naive } of winters) {
      expect(advised.chosen.bullpens).toBeLessThanOrEqual(WINTER.familyBullpensAtMost);
      expect(advised.ideas.length).toBeGreaterThan(0);
      expect(naive.ideas).toHaveLength(WINTER.bullpens / WINTER.bullpensPerTry);
    }
  });

  it('tell a family that is not the best one by what it costs, and nothing kept as nothing gained', () => {
    for (const { best, advised, naive } of winters) {
      for (const { family, right, regret } of [advised, naive]) {
        expect(right).toBe(family === best);
        expect(regret === 0).toBe(right);
      }
    }
    const keptNothing = winters.flatMap(({ advised, naive }) => [advised, naive]).filter(({ ideas }) => ideas.every(({ kept }) => !kept));
    expect(keptNothing.length).toBeGreaterThan(0);
    for (const { gained } of keptNothing) expect(gained).toBe(0);
  });
});

describe('the best family of an athlete', () => {
  const athletes = Array.from({ length: 60 }, (_, number) => drawnAthlete(randomFrom(11, `sample/${number}`), `a${number}`, false));
  const bestOf = ({ families, fastball, zone }: (typeof athletes)[number]): string => FAMILIES.toSorted((a, b) => trueMiss(families[a], fastball, zone) - trueMiss(families[b], fastball, zone))[0]!;

  it('is any of the three, on either side of both marks of efficiency', () => {
    const bests = athletes.map((athlete) => ({ best: bestOf(athlete), efficiency: athlete.fastball.efficiency }));
    for (const family of FAMILIES) expect(bests.filter(({ best }) => best === family).length).toBeGreaterThan(8);
    expect(new Set(bests.filter(({ efficiency }) => efficiency > 0.95).map(({ best }) => best)).size).toBeGreaterThan(1);
    expect(new Set(bests.filter(({ efficiency }) => efficiency < 0.95 && efficiency > 0.8).map(({ best }) => best)).size).toBe(3);
  });

  it('gets better when its throws scatter less about the middle of the target, however good the middle was', () => {
    for (const { families, fastball, zone: wanted } of athletes.slice(0, 10)) {
      const hand = families.split;
      const [own, from] = [meanBreak(hand), meanBreak(fastball)];
      const zone = { ...wanted, verticalM: own.verticalM - from.verticalM, armSideM: own.armSideM - from.armSideM };
      expect(trueMiss(changed(hand, { ...NO_CHANGE, scatter: 0.5 }), fastball, zone)).toBeLessThan(trueMiss(hand, fastball, zone));
    }
  });

  it('is a lot’s choice where all three are one hand', () => {
    const { families, fastball, zone } = drawnAthlete(randomFrom(3, 'alike'), 'c', true);
    expect(new Set(FAMILIES.map((family) => trueMiss(families[family], fastball, zone))).size).toBe(1);
    expect(playAlike(3, 0)).toEqual(playAlike(3, 0));
  });
});
