import type { ArmElsewhere } from '../../core/facts/arm-says.ts';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { AthleteElsewhere } from '../../core/facts/elsewhere-says.ts';
import { NOTHING_ELSEWHERE } from '../../core/session/brought.ts';
import { openSessions, sessionIn, type Ledger } from '../../core/session/ledger.ts';
import { daysHere, lastDays } from '../../core/session/throwing-days.ts';
import { armTogether, NOTHING_BROUGHT } from '../../core/session/told.ts';
import { athleteElsewhere, highestNumber } from './athlete-elsewhere.ts';
import { plansElsewhere } from './plans-elsewhere.ts';

interface Telling {
  readonly mound: string;
  readonly said: ArmElsewhere | AthleteElsewhere;
}

/**
 * What a mound must be told of an athlete before this statement is judged and stored there: before a session opens all that
 * other mounds know, before a comparison opens the numbers given there, so that no number is given twice, and before one goes on
 * the comparison itself, so that it can go on anywhere.
 */
export function toldBefore(ledgers: readonly Ledger[], mound: string, says: CoachSays): Telling[] {
  if (says.kind === 'session-opened') {
    const athlete = says.athlete.id;
    return [...armTelling(mound, null, athlete, ledgers), ...athleteTelling(mound, null, athlete, ledgers)];
  }
  if (says.kind !== 'comparison-opened' && says.kind !== 'comparison-continued') return [];
  const here = ledgers.find((ledger) => ledger.mound === mound);
  const athlete = here && sessionIn(here, says.session)?.athlete.id;
  if (here === undefined || athlete === undefined) return [];
  if (says.kind === 'comparison-continued') return plansElsewhere(ledgers, mound, athlete)?.comparisons.some(({ k }) => k === says.k) ? athleteTelling(mound, says.session, athlete, ledgers) : [];
  const given = highestNumber(ledgers.filter((ledger) => ledger !== here), athlete);
  const known = (here.otherMounds[athlete] ?? NOTHING_ELSEWHERE).comparisons;
  return given > known ? athleteTelling(mound, says.session, athlete, ledgers) : [];
}

/** What open sessions of the same athlete on other mounds must be told once this statement is stored: an arm has no mound, nor has a number. */
export function toldAfter(ledgers: readonly Ledger[], mound: string, says: CoachSays): Telling[] {
  const tellingTo = tellerOf(says);
  if (tellingTo === null || !('session' in says) || says.session === null) return [];
  const { session } = says;
  const here = ledgers.find((ledger) => ledger.mound === mound);
  const athlete = here && sessionIn(here, session)?.athlete.id;
  if (athlete === undefined) return [];
  return ledgers.filter((ledger) => ledger.mound !== mound).flatMap((ledger) =>
    openSessions(ledger)
      .filter(({ id }) => ledger.open[id]!.athlete.id === athlete)
      .flatMap(({ id }) => tellingTo(ledger.mound, id, athlete, ledgers)));
}

type Teller = (mound: string, session: string | null, athlete: string, ledgers: readonly Ledger[]) => Telling[];

function tellerOf({ kind }: CoachSays): Teller | null {
  switch (kind) {
    case 'arm-reported':
    case 'pain-answered': return armTelling;
    case 'gate-set':
    case 'gate-passed':
    case 'comfort-said':
    case 'count-planned':
    case 'comparison-opened':
    case 'comparison-continued': return athleteTelling;
    default: return null;
  }
}

function athleteTelling(...[mound, session, athlete, ledgers]: Parameters<Teller>): Telling[] {
  const said = athleteElsewhere(ledgers, mound, session, athlete);
  return said === null ? [] : [{ mound, said }];
}

function armTelling(...[mound, session, athlete, ledgers]: Parameters<Teller>): Telling[] {
  const others = ledgers.filter((ledger) => ledger.mound !== mound && ledger.athletes[athlete] !== undefined);
  const days = others.flatMap((ledger) => lastDays(daysHere(ledger, athlete)));
  const { pain, soreness, answeredAtMs } = others.map((ledger) => ledger.athletes[athlete]!.arm).reduce(armTogether, NOTHING_BROUGHT);
  if (days.length === 0 && pain === null && soreness === null && answeredAtMs === null) return [];
  const said = { kind: 'arm-elsewhere', athlete, session, days, pain, soreness, answeredAtMs };
  return [{ mound, said: structuredClone(said) as ArmElsewhere }];
}
