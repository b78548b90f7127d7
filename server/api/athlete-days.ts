import type { ArmReport } from '../../core/facts/care-view.ts';
import type { AthleteDays, MoundDay } from '../../core/facts/wire.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import { daysHere } from '../../core/session/throwing-days.ts';

/** What the arm of one athlete has done and what was said about it, over all mounds. Null for somebody nobody has heard of. */
export function athleteDays(ledgers: readonly Ledger[], athlete: string): AthleteDays | null {
  const visited = ledgers.filter((ledger) => ledger.athletes[athlete] !== undefined);
  if (visited.length === 0) return null;
  const days = visited.flatMap((ledger) => daysHere(ledger, athlete).map((day): MoundDay => ({ mound: ledger.mound, ...day })));
  return {
    athlete,
    days: days.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.mound.localeCompare(b.mound, 'en'))),
    pain: newest(visited, athlete, 'pain'),
    soreness: newest(visited, athlete, 'soreness'),
  };
}

/**
 * An athlete may have said something on two mounds: the later one stands, unless pain was answered for after it, on
 * whichever mound. The mound named is one that knows of it, which another may have told.
 */
function newest(ledgers: readonly Ledger[], athlete: string, what: 'pain' | 'soreness'): AthleteDays['pain'] {
  const answeredAtMs = what === 'soreness' ? -Infinity : Math.max(...ledgers.map(({ athletes }) => athletes[athlete]?.arm.answeredAtMs ?? -Infinity));
  const said = ledgers.flatMap(({ mound, athletes }) => {
    const report: ArmReport | null = athletes[athlete]?.arm[what] ?? null;
    return report === null || report.atMs <= answeredAtMs ? [] : [{ mound, report }];
  });
  return said.sort((a, b) => a.report.atMs - b.report.atMs).at(-1) ?? null;
}
