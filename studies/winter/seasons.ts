import { playAlike, playWinter, type AlikeWinter, type AthletesWinter } from './winter.ts';

/** Which athletes play: so many of each seed. */
export interface Squads {
  readonly seeds: readonly number[];
  readonly athletesPerSeed: number;
}

/** The winters of each seed. */
export const seasons = (squads: Squads): AthletesWinter[][] => bySeed(squads, playWinter);

/** The same of athletes whose three families are alike. */
export const alikeSeasons = (squads: Squads): AlikeWinter[][] => bySeed(squads, playAlike);

function bySeed<One>({ seeds, athletesPerSeed }: Squads, play: (seed: number, number: number) => One): One[][] {
  return seeds.map((seed) => Array.from({ length: athletesPerSeed }, (_, number) => play(seed, number)));
}
