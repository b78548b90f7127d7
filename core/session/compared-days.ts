import { missOf } from '../coaching/target.ts';
import type { ComparisonEntry } from '../facts/advice-view.ts';
import { allTaken } from './compared.ts';
import type { ComparedDay } from './found-better.ts';
import { sessionIn, type Ledger } from './ledger.ts';
import { workOf } from './work.ts';

/** One day of a comparison as this ledger has it; empty where it holds neither session nor throws. */
export function comparedDays(ledger: Ledger, { k, stage, zone }: ComparisonEntry, day: ComparisonEntry['days'][number]): readonly ComparedDay[] {
  const trials = sessionIn(ledger, day.session)?.trials ?? [];
  const [a, b] = [day.a, day.b].map((letter) => trials.find((trial) => trial.letter === letter));
  if (a === undefined || b === undefined) return [];
  const taken = allTaken({ stage, days: [day] }, () => ledger).filter(({ excluded }) => !excluded);
  return [...new Set(taken.map((one) => one.day))].map((on): ComparedDay => {
    const thrown = taken.filter((one) => one.day === on);
    const missesOf = (trial: 'a' | 'b'): number[] => thrown.filter((one) => one.trial === trial).map((one) => missOf(one, zone).size);
    return { k, session: day.session, day: on, a: missesOf('a'), b: missesOf('b'), workA: workOf(a), workB: workOf(b), lastAtMs: Math.max(...thrown.map(({ atMs }) => atMs)) };
  });
}
