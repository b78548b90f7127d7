import type { Erased } from '../facts/erased-says.ts';
import type { Fact, Said } from '../facts/fact.ts';
import { foldFact } from './fold.ts';
import { emptyLedger, sessionIn, throwsOf, type ThrowEntry } from './ledger.ts';
import { numberOf } from './settled.ts';

/** What of one mound's log is about an athlete. */
export interface AboutAthlete {
  /** Ids of the athlete's sessions; screens make them of the name. */
  readonly sessions: readonly string[];
  /** Every name that the athlete was given. */
  readonly names: readonly string[];
  /** How many throws were the athlete's in the end. */
  readonly throws: number;
  readonly facts: readonly Fact[];
  /** Facts of others that name one of the athlete's sessions: throws that were moved out of it. */
  readonly movedOut: readonly Fact[];
}

/**
 * The facts about an athlete: sessions and all that was said in them, what other mounds told, and the throws that are the
 * athlete's as the log stands now. A throw that was moved on to somebody else is somebody else's.
 * @param facts of one mound, from its first
 */
export function aboutAthlete(facts: readonly Fact[], athlete: string): AboutAthlete {
  const ledger = facts.filter(isNoWithdrawal).reduce(foldFact, emptyLedger(facts[0]?.mound ?? ''));
  const sessions = new Set(ledger.order.filter((id) => sessionIn(ledger, id)?.athlete.id === athlete));
  const thrown = [...sessions].flatMap((id) => throwsOf(ledger, id));
  const isAbout = saysOf(athlete, sessions, thrown);
  const about = facts.filter(isAbout);
  return {
    sessions: [...sessions],
    names: [...new Set(about.flatMap(({ said }) => (said.kind === 'session-opened' || said.kind === 'session-imported' ? [said.athlete.name] : [])))],
    throws: thrown.length,
    facts: about,
    movedOut: facts.filter((fact) => fact.said.kind === 'throws-moved' && sessions.has(fact.said.from ?? '') && !isAbout(fact)),
  };
}

/** An import that was taken back counts nowhere any more, and is the athlete's all the same: who asks what is kept of somebody reads the log without these. */
export function isNoWithdrawal({ said }: Fact): boolean {
  return said.kind !== 'import-withdrawn';
}

/**
 * Whether a fact of a mound is about an athlete.
 * @param sessions all of the athlete's there
 * @param thrown every throw that is the athlete's in the end
 */
export function saysOf(athlete: string, sessions: ReadonlySet<string>, thrown: readonly Pick<ThrowEntry, 'place' | 'source'>[]): (fact: Fact) => boolean {
  const places = new Set(thrown.map(({ place }) => place));
  const measured = new Set(thrown.map(({ source }) => numberOf(source.device, source)));
  return ({ place, said }) => {
    switch (said.kind) {
      case 'throw-measured':
      case 'throw-imported': return places.has(place);
      case 'throw-corrected': return measured.has(numberOf(said.source.device, said.corrects));
      case 'session-opened':
      case 'session-imported': return said.athlete.id === athlete;
      case 'arm-elsewhere':
      case 'athlete-elsewhere': return said.athlete === athlete;
      default: return 'session' in said && said.session !== null && sessions.has(said.session);
    }
  };
}

/** What stands in place of a fact about an athlete who is erased. */
export function erasing({ said }: Fact, erasedAtMs: number): Erased {
  const tookMound = said.kind === 'session-opened' || said.kind === 'mound-passed';
  if (said.kind !== 'throw-measured') return { kind: 'erased', erasedAtMs, tookMound, seenBy: null };
  const { device, sight, axis } = said.source;
  return { kind: 'erased', erasedAtMs, tookMound, seenBy: { device, sight, axis } };
}

/** The same move without the session that the throws came from. */
export function withoutFrom(said: Said): Said {
  if (said.kind !== 'throws-moved') return said;
  const { from: _, ...rest } = said;
  return rest;
}
