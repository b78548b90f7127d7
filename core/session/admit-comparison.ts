import type { CoachSays } from '../facts/coach.ts';
import type { Stage } from '../facts/vocabulary.ts';
import { baselineNumbered } from './fastballs.ts';
import { sessionIn, thrownBy, type Ledger, type SessionEntry } from './ledger.ts';
import type { Objection } from './objection.ts';
import { NOTHING_ELSEWHERE } from './brought.ts';
import { comparisonOf, nextComparison } from './planned.ts';

type ComparisonSays = Extract<CoachSays, { kind: 'comparison-opened' | 'comparison-continued' }>;
type Day = Extract<CoachSays, { kind: 'comparison-continued' }>['day'];

/** A comparison holds two trials of one stage against a baseline that exists, under the athlete's next number. */
export function toComparison(ledger: Ledger, session: SessionEntry, says: ComparisonSays): Objection | null {
  if (says.kind === 'comparison-opened') {
    const next = nextNumber(ledger, session);
    if (says.k !== next) return { code: 'not-the-next-number', path: 'k', sentence: `The next comparison of ${session.athlete.name} is number ${next}, not ${says.k}.` };
    return dayOf(ledger, says, says.stage, session.athlete.id, '');
  }
  const known = comparisonOf(session.planned, says.k);
  if (known === undefined) return { code: 'no-such-comparison', path: 'k', sentence: `${session.athlete.name} has no comparison ${says.k}; open it first.` };
  if (known.days.some((day) => day.session === says.day.session)) return { code: 'day-known', path: 'day.session', sentence: `Comparison ${says.k} already holds session ${says.day.session}.` };
  return dayOf(ledger, says.day, known.stage, session.athlete.id, 'day.');
}

/** A comparison may have been opened in a session that was closed long ago, or on another mound, after this one had begun. */
function nextNumber(ledger: Ledger, { planned, athlete }: SessionEntry): number {
  const everywhere = ledger.athletes[athlete.id]?.plans.comparisons ?? [];
  const { comparisons: elsewhere } = ledger.otherMounds[athlete.id] ?? NOTHING_ELSEWHERE;
  return nextComparison({ ...planned, comparisons: [...planned.comparisons, ...everywhere], comparisonsElsewhere: Math.max(elsewhere, planned.comparisonsElsewhere) });
}

/** A session of another mound cannot be looked into from here and is taken at its word. */
function dayOf(ledger: Ledger, { session: id, a, b, baseline }: Day, stage: Stage, athlete: string, path: string): Objection | null {
  if (a === b) return { code: 'one-trial', path: `${path}b`, sentence: `Trial ${a} cannot be compared with itself; choose another one.` };
  const session = sessionIn(ledger, id);
  if (session === undefined) return null;
  if (session.athlete.id !== athlete) return { code: 'other-athlete', path: `${path}session`, sentence: `Session ${id} is of ${session.athlete.name}; a comparison is of one athlete.` };
  const missing = ([['a', a], ['b', b]] as const).find(([, letter]) => !session.trials.some((trial) => trial.letter === letter));
  if (missing !== undefined) return { code: 'no-such-trial', path: `${path}${missing[0]}`, sentence: `Session ${id} has no trial ${missing[1]}.` };
  const known = baselineNumbered(thrownBy(ledger, id), session, stage, baseline);
  return known !== undefined ? null : { code: 'no-such-baseline', path: `${path}baseline`, sentence: `Session ${id} has no fastball baseline ${baseline} in this stage.` };
}
