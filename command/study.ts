import type { Command } from 'commander';
import path from 'node:path';
import { sectionText, type Section } from '../studies/section.ts';
import { FoundWrong } from './failure.ts';
import { progress, say, sayJson } from './talk.ts';
import { place, wholeNumber } from './values.ts';

const SEEDS = [101, 102, 103, 104];

interface Asked {
  readonly runs: number;
  readonly athletes?: number;
  readonly write?: string | true;
  readonly json?: true;
}

export function addStudy(program: Command, home: string): void {
  program.command('study')
    .description('Asks how often the verdicts and the advice are wrong, over many simulated evenings and winters (some minutes).')
    .option('--runs <n>', 'evenings of each of four seeds', wholeNumber('--runs', 10, 1_000_000), 10_000)
    .option('--athletes <n>', 'winters of each of twenty seeds, 0 for none (default: as many as docs/evidence.md rests on)', wholeNumber('--athletes', 0, 10_000))
    .option('--write [page]', 'put the tables between the two marks of a page too, docs/evidence.md when none is named', place('--write'))
    .option('--json', 'the tables as one line of JSON')
    .addHelpText('after', `
Exit code 1 when a bound was missed; with few runs chance alone misses some.

Examples:
  offpace study
  offpace study --runs 100 --athletes 0 --json`)
    .action((asked: Asked) => study(asked, path.join(home, 'docs/evidence.md')));
}

async function study({ runs, athletes, write, json }: Asked, page: string): Promise<void> {
  const [{ sectionsOf, study: ask }, { WINTER }] = await Promise.all([import('../studies/study.ts'), import('../studies/winter/parameters.ts')]);
  const winters = { ...WINTER, athletesPerSeed: athletes ?? WINTER.athletesPerSeed };
  const told: string[] = [`Seeds ${SEEDS.join(', ')}; ${SEEDS.length * runs} evenings a row.`];
  const sections: Section[] = [];
  const tell = (text: string): void => {
    if (!json) say(`${text}\n`);
  };
  const wanted = { evenings: { seeds: SEEDS, runsPerSeed: runs }, winters };
  const bar = progress(sectionsOf(wanted), 'tables');
  tell(told[0]!);
  for (const section of ask(wanted)) {
    sections.push(section);
    told.push(sectionText(section));
    tell(told.at(-1)!);
    bar.at(sections.length);
  }
  bar.end();
  const missed = sections.flatMap((section) => section.missed);
  told.push(missed.length === 0 ? 'Every bound was kept.' : `${missed.length} of the bounds were missed.`);
  if (json) sayJson({ seeds: SEEDS, runsPerSeed: runs, athletesPerSeed: winters.athletesPerSeed, sections, missed });
  else say(told.at(-1)!);
  if (write !== undefined) (await import('../studies/evidence-page.ts')).writeIntoPage(write === true ? page : write, told.join('\n\n'));
  if (missed.length > 0) throw new FoundWrong();
}
