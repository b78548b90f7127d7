import type { Section } from './section.ts';
import { changeOfOneMeasure, changeOfTheMiss } from './verdict/change.ts';
import { earlierTables } from './verdict/earlier-tables.ts';
import type { Chance } from './verdict/evenings.ts';
import { noChange } from './verdict/no-change.ts';
import { numberedComparisons } from './verdict/numbered.ts';
import { whichVariance } from './verdict/which-variance.ts';
import { alikeSection } from './winter/alike-section.ts';
import { familySection } from './winter/family-section.ts';
import { ideasSection } from './winter/ideas-section.ts';
import { alikeSeasons, seasons, type Squads } from './winter/seasons.ts';

/** How much is thrown: more of it says more surely how often a verdict is wrong. */
export interface Thrown {
  readonly evenings: Chance;
  readonly winters: Squads;
}

/** All sections of the study, each worked out when it is asked for, `sectionsOf` many; without athletes those about winters are left out. */
export function* study({ evenings, winters }: Thrown): Generator<Section> {
  for (const asked of VERDICTS) yield asked(evenings);
  if (winters.athletesPerSeed === 0) return;
  const played = seasons(winters);
  yield familySection(played);
  yield ideasSection(played);
  yield alikeSection(alikeSeasons(winters));
}

const VERDICTS: readonly ((chance: Chance) => Section)[] = [noChange, changeOfOneMeasure, changeOfTheMiss, numberedComparisons, whichVariance, earlierTables];

export const sectionsOf = ({ winters }: Thrown): number => VERDICTS.length + (winters.athletesPerSeed === 0 ? 0 : 3);
