import type { SessionView, ThrowView } from '../../core/facts/views.ts';
import type { Speech } from '../words/speech.ts';
import { fastballRows } from './against-fastball.ts';
import { plateRows } from './at-the-plate.ts';
import { flightRows, releaseRows } from './in-the-air.ts';
import type { NumberRow } from './number-row.ts';
import { spinRows } from './spin.ts';

/** The numbers that belong together. */
export interface NumberGroup {
  readonly group: keyof Speech['words']['throwNumbers']['groups'];
  readonly name: string;
  readonly rows: readonly NumberRow[];
}

/** Every number of a throw: its value with its unit, or why there is none, what it rests on and how sure it is. */
export function numberGroups(thrown: ThrowView, session: SessionView, speech: Speech): readonly NumberGroup[] {
  const { groups } = speech.words.throwNumbers;
  return [
    { group: 'release', name: groups.release, rows: releaseRows(thrown, speech) },
    { group: 'flight', name: groups.flight, rows: flightRows(thrown, speech) },
    { group: 'spin', name: groups.spin, rows: spinRows(thrown, speech) },
    { group: 'plate', name: groups.plate, rows: plateRows(thrown, session.athlete.hand, speech) },
    { group: 'fastball', name: groups.fastball, rows: fastballRows(thrown, session, speech) },
  ];
}
