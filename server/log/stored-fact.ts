import { FACT_VERSION, type Fact, type Said } from '../../core/facts/fact.ts';

export interface FactRow {
  readonly mound: string;
  readonly place: number;
  readonly at_ms: number;
  readonly said_by: string;
  readonly version: number;
  readonly said: string;
}

/** A fact as it was written. What stands in the log was checked at the door and is not checked again. */
export function storedFact({ mound, place, at_ms, said_by, version, said }: FactRow): Fact {
  if (version !== FACT_VERSION) throw new Error(`The fact at place ${place} of ${mound} has version ${version}; this Offpace reads version ${FACT_VERSION}.`);
  return { mound, place, atMs: at_ms, by: said_by, version, said: JSON.parse(said) as Said };
}
