import type { Section } from '../section.ts';
import { inPercent, intervalText, overSeeds, perSeed, ratioOverSeeds, type OverSeeds } from './over-seeds.ts';
import { WINTER } from './parameters.ts';
import type { AthletesWinter } from './winter.ts';

const TIMES_AS_OFTEN = 0.5;
const OR_AT_MOST = 0.05;

interface Kind {
  readonly name: string;
  readonly is: (change: number) => boolean;
  /** Whether keeping it is an error that is bounded. */
  readonly useless: boolean;
}

const helps = (change: number): boolean => change < 0;
const isUseless = (change: number): boolean => change >= 0;

const KINDS: readonly Kind[] = [
  { name: 'does nothing', is: (change) => change === 0, useless: true },
  { name: 'does nothing or harms', is: isUseless, useless: true },
  { name: 'harms', is: (change) => change > 0, useless: false },
  { name: 'helps', is: helps, useless: false },
  { name: 'helps by a smallest difference that matters or more', is: (change) => change <= -1, useless: false },
];

type Seasons = readonly (readonly AthletesWinter[])[];
type Coach = 'advised' | 'naive';

/** Which grips and cues each coach kept, against what they truly do. */
export function ideasSection(seasons: Seasons): Section {
  const played = KINDS.map((kind) => ({ kind, advised: ratesOf(seasons, 'advised', kind), naive: ratesOf(seasons, 'naive', kind) }));
  return {
    title: 'A simulated winter: grips and cues',
    about: [
      `The same winters. Half of all grips and cues do nothing at all; what the others change is chance, so they help or harm. By the advice one is kept when its comparison, in the blocks that are offered and over at most ${WINTER.bullpensPerTry} bullpens, says \`better\`; it goes with any other verdict,`,
      'and when the outlook is longer than that. The other coach throws as many with and without and keeps it if the mean miss of the last three throws is lower. Kept, in percent of those tried, with the 95 % interval over the seeds.',
    ],
    header: ['a grip or cue that', 'tried', 'kept by the verdict', 'tried', 'kept by the glance', 'times as often'],
    rows: [
      ...played.map(({ kind, advised, naive }) => [kind.name, String(advised.tried), percentText(overSeeds(advised.rates)), String(naive.tried), percentText(overSeeds(naive.rates)), ratioText(kind, advised.rates, naive.rates)]),
      ['settled by a verdict, %', '', settled(seasons), '', 'always', ''],
      ['kept a winter, does nothing or harms', '', aWinter(seasons, 'advised', isUseless), '', aWinter(seasons, 'naive', isUseless), ''],
      ['kept a winter, helps', '', aWinter(seasons, 'advised', helps), '', aWinter(seasons, 'naive', helps), ''],
      ['true miss gained by what was kept', '', gained(seasons, 'advised'), '', gained(seasons, 'naive'), ''],
    ],
    missed: played.flatMap(({ kind, advised, naive }) => missedOf(kind, overSeeds(advised.rates), ratioOverSeeds(advised.rates, naive.rates))),
  };
}

function missedOf({ name, useless }: Kind, rate: OverSeeds, ratio: OverSeeds): string[] {
  if (!useless || ratio.high <= TIMES_AS_OFTEN || rate.high <= OR_AT_MOST) return [];
  return [`kept though it ${name}: ${percentText(rate)} %, ${ratio.mean.toFixed(2)} times as often (up to ${ratio.high.toFixed(2)}) where at most ${TIMES_AS_OFTEN} times (or ${100 * OR_AT_MOST} %) was promised of the upper limit.`];
}

/** Of each seed: the share kept of those tried. A seed that tried none says nothing and counts as none kept. */
function ratesOf(seasons: Seasons, coach: Coach, { is }: Kind): { readonly rates: number[]; readonly tried: number } {
  const ideas = seasons.map((winters) => winters.flatMap((winter) => winter[coach].ideas.filter(({ change }) => is(change))));
  return { rates: ideas.map((own) => own.filter(({ kept }) => kept).length / Math.max(1, own.length)), tried: ideas.flat().length };
}

function aWinter(seasons: Seasons, coach: Coach, is: Kind['is']): string {
  const all = seasons.flat();
  return (all.flatMap((winter) => winter[coach].ideas).filter(({ kept, change }) => kept && is(change)).length / all.length).toFixed(2);
}

/** Of all comparisons by the advice; the others were given up. */
function settled(seasons: Seasons): string {
  const ideas = seasons.flat().flatMap((winter) => winter.advised.ideas);
  return ((100 * ideas.filter((idea) => idea.settled).length) / ideas.length).toFixed(1);
}

const gained = (seasons: Seasons, coach: Coach): string => intervalText(overSeeds(perSeed(seasons, (winter) => winter[coach].gained)), 2);

const percentText = (rate: OverSeeds): string => intervalText(inPercent({ ...rate, low: Math.max(0, rate.low) }), 2);

function ratioText({ useless }: Kind, advised: readonly number[], naive: readonly number[]): string {
  const told = intervalText(ratioOverSeeds(advised, naive), 3);
  return useless ? `${told}, bound: at most ${TIMES_AS_OFTEN} (or ${100 * OR_AT_MOST} %)` : told;
}
