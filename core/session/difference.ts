import type { Difference } from '../facts/wire.ts';

type Parts = Readonly<Record<string, unknown>>;

/** Where nothing differs. */
const NOTHING = Symbol('nothing differs');

/** What of two pieces of plain data differs, by name. Both have the same names, as they stand in JSON. */
export function differencesBetween(before: object, after: object): Record<string, Difference> {
  const found = between(before, after);
  return found === NOTHING ? {} : found as Record<string, Difference>;
}

function between(before: unknown, after: unknown): Difference | typeof NOTHING {
  if (before === after) return NOTHING;
  if (typeof after !== 'object' || after === null) return after as Difference;
  if (typeof before !== 'object' || before === null || !isMadeAlike(before as Parts, after as Parts)) return [after];
  let found: Record<string, Difference> | null = null;
  for (const name of Object.keys(after)) {
    const inside = between((before as Parts)[name], (after as Parts)[name]);
    if (inside !== NOTHING && inside !== undefined) (found ??= {})[name] = inside;
  }
  return found ?? NOTHING;
}

/** Whether the one can become the other by new values alone: neither a name nor a member of a list goes away. */
function isMadeAlike(before: Parts, after: Parts): boolean {
  if (Array.isArray(before) || Array.isArray(after)) return Array.isArray(before) && Array.isArray(after) && before.length === after.length;
  for (const name of Object.keys(before)) if (before[name] !== undefined && after[name] === undefined) return false;
  return true;
}

/** `withDifferences(before, differencesBetween(before, after))` equals `after`. What does not differ stays the same object. */
export function withDifferences<Data extends object>(before: Data, differences: Readonly<Record<string, Difference>>): Data {
  const after = (Array.isArray(before) ? [...before] : { ...before }) as Record<string, unknown>;
  for (const name of Object.keys(differences)) after[name] = become(after[name], differences[name]!);
  return after as Data;
}

function become(before: unknown, difference: Difference): unknown {
  if (typeof difference !== 'object' || difference === null) return difference;
  if (Array.isArray(difference)) return difference[0];
  return withDifferences(before as object, difference as Record<string, Difference>);
}
