import type { ArmElsewhere } from '../../core/facts/arm-says.ts';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import { daysHere, lastDays } from '../../core/session/throwing-days.ts';

interface Telling {
  readonly mound: string;
  readonly said: ArmElsewhere;
}

/** What a mound must be told of an athlete's arm before this statement is stored there; null where nobody else knows anything. */
export function toldBefore(ledgers: readonly Ledger[], mound: string, says: CoachSays): Telling | null {
  return says.kind === 'session-opened' ? tellingTo(mound, null, says.athlete.id, ledgers) : null;
}

/** What open sessions of the same athlete on other mounds must be told once this statement is stored: an arm has no mound. */
export function toldAfter(ledgers: readonly Ledger[], mound: string, says: CoachSays): Telling[] {
  if (says.kind !== 'arm-reported' && says.kind !== 'pain-answered') return [];
  const athlete = ledgers.find((ledger) => ledger.mound === mound)?.sessions[says.session]?.athlete.id;
  if (athlete === undefined) return [];
  return ledgers.filter((ledger) => ledger.mound !== mound).flatMap((ledger) =>
    ledger.order
      .filter((id) => ledger.sessions[id]?.athlete.id === athlete && ledger.sessions[id].closedAtMs === null)
      .flatMap((id) => tellingTo(ledger.mound, id, athlete, ledgers) ?? []));
}

function tellingTo(mound: string, session: string | null, athlete: string, ledgers: readonly Ledger[]): Telling | null {
  const others = ledgers.filter((ledger) => ledger.mound !== mound && ledger.athletes[athlete] !== undefined);
  const arms = others.map((ledger) => ledger.athletes[athlete]!.arm);
  const days = others.flatMap((ledger) => lastDays(daysHere(ledger, athlete)));
  const newest = <T extends { readonly atMs: number }>(reports: readonly (T | null)[]): T | null =>
    reports.filter((one) => one !== null).sort((a, b) => a.atMs - b.atMs).at(-1) ?? null;
  const pain = newest(arms.map((arm) => arm.pain));
  const soreness = newest(arms.map((arm) => arm.soreness));
  const answered = arms.flatMap(({ answeredAtMs }) => (answeredAtMs === null ? [] : [answeredAtMs]));
  if (days.length === 0 && pain === null && soreness === null && answered.length === 0) return null;
  const said = { kind: 'arm-elsewhere', athlete, session, days, pain, soreness, answeredAtMs: answered.length === 0 ? null : Math.max(...answered) };
  return { mound, said: structuredClone(said) as ArmElsewhere };
}
