import type { Database } from 'libsql';
import type { Identity, Settled } from './fact-log.ts';

type SettledNumber =
  | { readonly kind: 'throw-measured' | 'throw-corrected'; readonly fingerprint: string; readonly mound: string; readonly place: number }
  | { readonly kind: 'refused' };

/** Looks up what became of a device's number; null when it never came to an end. */
export function findNumber(database: Database): (identity: Identity) => SettledNumber | null {
  const select = database.prepare('SELECT kind, fingerprint, mound, place FROM numbers WHERE device = ? AND run = ? AND sequence = ?');
  return ({ device, run, sequence }) => (select.get(device, run, sequence) as SettledNumber | undefined) ?? null;
}

/** Reads how far a device's run is settled, and what is missing in between. */
export function readSettled(database: Database): (device: string, run: string) => Settled {
  const highest = database.prepare('SELECT coalesce(max(sequence), 0) AS highest FROM numbers WHERE device = ? AND run = ?');
  const select = database.prepare(`
    SELECT before + 1 AS first, sequence - 1 AS last
    FROM (SELECT sequence, lag(sequence, 1, 0) OVER (ORDER BY sequence) AS before FROM numbers WHERE device = ? AND run = ?)
    WHERE sequence > before + 1 ORDER BY sequence`);
  return (device, run) => {
    const gaps = (select.all(device, run) as { first: number; last: number }[]).map(({ first, last }) => [first, last] as const);
    const { highest: through } = highest.get(device, run) as { highest: number };
    return { through: gaps[0] === undefined ? through : gaps[0][0] - 1, gaps };
  };
}
