import type { Section } from '../section.ts';
import { inPercent, intervalText, overSeeds, perSeed, type OverSeeds } from './over-seeds.ts';
import type { AlikeWinter } from './winter.ts';

type Of = (winter: AlikeWinter) => boolean;

/** The control: three families that are one and the same hand, and a lot that calls one of them the right one. */
export function alikeSection(seasons: readonly (readonly AlikeWinter[])[]): Section {
  const shares = (of: Of): number[] => perSeed(seasons, (winter) => Number(of(winter)));
  const [advised, naive] = [shares((winter) => winter.advised), shares((winter) => winter.naive)];
  const lead = overSeeds(advised.map((share, seed) => share - naive[seed]!));
  const shows = lead.low > 0 || lead.high < 0;
  return {
    title: 'A simulated winter: the control',
    about: [
      'Athletes whose three families are one and the same hand, so that nothing is to be chosen, and a lot that calls one family the right one. Whoever is right more often than the other has seen the lot. In percent, with the 95 % interval over the seeds.',
      'By the true miss neither can gain anything, since it is the same three times.',
    ],
    header: ['what', 'by the advice', 'by efficiency alone', 'advice minus efficiency'],
    rows: [
      ['the family of the lot', text(overSeeds(advised)), text(overSeeds(naive)), `${text(lead)}, bound: holds 0`],
      ['no family clearly ahead at the end', text(overSeeds(shares(({ last }) => last === 'try-all'))), 'never', ''],
    ],
    missed: shows ? [`control: the advice is right more often by ${text(lead)} % though there is nothing to choose.`] : [],
  };
}

const text = (share: OverSeeds): string => intervalText(inPercent(share), 1);
