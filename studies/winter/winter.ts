import { FAMILIES, type Family } from '../../core/facts/vocabulary.ts';
import { randomFrom } from '../../simulators/random.ts';
import { familyByAdvice, type FamilyChosen } from './advised-families.ts';
import { ideasByAdvice, type Tried } from './advised-ideas.ts';
import { newBook, type Book } from './book.ts';
import { DEVICE } from './device.ts';
import { drawnAthlete, type DrawnAthlete } from './drawn-athlete.ts';
import { familyByEfficiency, ideasByGlance } from './naive-coach.ts';
import { WINTER } from './parameters.ts';
import { handWith, trueArm } from './true-arm.ts';
import { trueMiss } from './true-miss.ts';

const { bullpens, throwsPerBullpen, fastballsPerBullpen: fastballs, familyBullpensAtMost, bullpensPerTry, ideas } = WINTER;
const throwsPerTry = bullpensPerTry * (throwsPerBullpen - fastballs);

/** One grip or cue that was tried, and what it truly changed. */
interface JudgedIdea {
  readonly kept: boolean;
  readonly settled: boolean;
  /** Of the true miss; below 0 it helps, and exactly 0 is what does nothing. */
  readonly change: number;
}

/** What one coach made of a winter. */
export interface Outcome {
  readonly family: Family;
  readonly right: boolean;
  /** True miss of the chosen family beyond that of the best one. */
  readonly regret: number;
  /** True miss at the end of the winter. */
  readonly missAtEnd: number;
  /** By how much the grips and cues that were kept truly lowered it. */
  readonly gained: number;
  readonly ideas: readonly JudgedIdea[];
}

export interface AthletesWinter {
  readonly best: Family;
  readonly advised: Outcome & { readonly chosen: FamilyChosen };
  readonly naive: Outcome;
}

type Chance = (name: string) => ReturnType<typeof randomFrom>;

/** Two winters of one athlete, with the same budget: by the advice, and by the naive rule. The same seed gives the same winters. */
export function playWinter(seed: number, number: number): AthletesWinter {
  const chance = chanceOf('winter', seed, number);
  const athlete = drawnAthlete(chance('athlete'), `w${seed}-${number}`, false);
  const misses = missesOf(athlete);
  const best = FAMILIES.toSorted((a, b) => misses[a] - misses[b])[0]!;
  const outcome = (family: Family, tried: readonly Tried[]): Outcome => {
    const missAtEnd = missAfter(athlete, family, tried);
    return {
      family,
      right: family === best,
      regret: misses[family] - misses[best],
      missAtEnd,
      gained: misses[family] - missAtEnd,
      ideas: tried.map((one) => judged(athlete, family, one)),
    };
  };

  const book = bookOf(athlete, chance, 'advised');
  const chosen = familyByAdvice(book, fastballs, familyBullpensAtMost);
  const followed = ideasByAdvice(book, chosen.family, { bullpens: bullpens - chosen.bullpens, fastballs, throwsPerTry, ideas });

  const other = bookOf(athlete, chance, 'naive');
  const family = familyByEfficiency(other, fastballs);
  const glanced = ideasByGlance(other, family, { bullpens, fastballs, throwsPerBullpen, bullpensPerTry, ideas });
  return { best, advised: { ...outcome(chosen.family, followed), chosen }, naive: outcome(family, glanced) };
}

export interface AlikeWinter {
  /** Whether each coach's family is the one that a lot called the right one. */
  readonly advised: boolean;
  readonly naive: boolean;
  readonly last: FamilyChosen['last'];
}

/** An athlete whose three families are one and the same hand: nobody can choose better than a lot. */
export function playAlike(seed: number, number: number): AlikeWinter {
  const chance = chanceOf('alike', seed, number);
  const athlete = drawnAthlete(chance('athlete'), `c${seed}-${number}`, true);
  const lot = FAMILIES[Math.floor(chance('lot').uniform() * FAMILIES.length)]!;
  const chosen = familyByAdvice(bookOf(athlete, chance, 'advised'), fastballs, familyBullpensAtMost);
  const family = familyByEfficiency(bookOf(athlete, chance, 'naive'), fastballs);
  return { advised: chosen.family === lot, naive: family === lot, last: chosen.last };
}

const chanceOf = (study: string, seed: number, number: number): Chance => (name) => randomFrom(seed, `${study}/${number}/${name}`);

const bookOf = (athlete: DrawnAthlete, chance: Chance, coach: string): Book =>
  newBook(trueArm(athlete, chance(coach)), { planned: throwsPerBullpen, source: DEVICE });

function missesOf(athlete: DrawnAthlete): Record<Family, number> {
  const { families, fastball, zone } = athlete;
  const of = (family: Family): number => trueMiss(families[family], fastball, zone);
  return { turnover: of('turnover'), 'seam-effect': of('seam-effect'), split: of('split') };
}

function missWith(athlete: DrawnAthlete, family: Family, ideasKept: readonly number[]): number {
  return trueMiss(handWith(athlete, family, ideasKept), athlete.fastball, athlete.zone);
}

function missAfter(athlete: DrawnAthlete, family: Family, tried: readonly Tried[]): number {
  return missWith(athlete, family, tried.filter(({ kept }) => kept).map(({ idea }) => idea));
}

function judged(athlete: DrawnAthlete, family: Family, { idea, standing, kept, settled }: Tried): JudgedIdea {
  if (athlete.ideas[idea]!.nothing) return { kept, settled, change: 0 };
  const change = missWith(athlete, family, [...standing, idea]) - missWith(athlete, family, standing);
  return { kept, settled, change };
}
