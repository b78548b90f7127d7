import { deserialize, serialize } from 'node:v8';
import type { MoundAir } from '../core/facts/air-says.ts';
import type { Fact } from '../core/facts/fact.ts';
import type { ThrowEntry, Thrown } from '../core/session/ledger.ts';
import { ownTimeMs } from '../core/session/own-time.ts';
import { inRuns } from '../core/session/thrown.ts';

/** Places that are read in one go, though some between them are not wanted. */
const GAP = 32;

/** What a session says of its throws; what was measured stays in the log. */
interface Pack {
  /** Place, which of the tags, which air, and the whole throw where it was corrected: the log has its first form at its place. */
  readonly throws: readonly (readonly [place: number, tags: number, air: number, corrected: ThrowEntry | null])[];
  readonly tags: readonly ThrowEntry['tags'][];
  readonly airs: readonly (MoundAir | null)[];
}

export function packed(thrown: Thrown): Buffer {
  const tags = new Numbered<ThrowEntry['tags']>();
  const airs = new Numbered<MoundAir | null>();
  const throws = thrown.flat().map((entry): Pack['throws'][number] => [entry.place, tags.numberOf(entry.tags), airs.numberOf(entry.air), entry.corrected ? entry : null]);
  return serialize({ throws, tags: tags.all, airs: airs.all } satisfies Pack);
}

/** Those that say the same have one number. */
class Numbered<One> {
  readonly all: One[] = [];
  readonly #numbers = new Map<string, number>();

  numberOf(one: One): number {
    const key = JSON.stringify(one);
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    this.#numbers.set(key, this.all.length);
    return this.all.push(one) - 1;
  }
}

/**
 * The throws of a session again; null where the log no longer has one of them as it was.
 * @param read the facts of the mound behind one place, through another
 */
export function unpacked(bytes: Uint8Array, session: string, read: (afterPlace: number, throughPlace: number) => Iterable<Fact>): Thrown | null {
  const { throws, tags, airs } = deserialize(bytes) as Pack;
  const measured = new Map<number, Fact>();
  for (const [from, to] of stretches(throws.flatMap(([place, , , corrected]) => (corrected === null ? [place] : [])))) {
    for (const fact of read(from - 1, to)) measured.set(fact.place, fact);
  }
  const entries: ThrowEntry[] = [];
  for (const [place, tagged, air, corrected] of throws) {
    const fact = measured.get(place);
    const entry = corrected ?? entryOf(fact, { session, tags: tags[tagged]!, air: airs[air]! });
    if (entry === null) return null;
    entries.push(entry);
  }
  return inRuns(entries);
}

function entryOf(fact: Fact | undefined, { session, tags, air }: Pick<ThrowEntry, 'session' | 'tags' | 'air'>): ThrowEntry | null {
  if (fact?.said.kind !== 'throw-measured' && fact?.said.kind !== 'throw-imported') return null;
  const { source, body } = fact.said;
  return { place: fact.place, atMs: ownTimeMs(fact), source, body, air, corrected: false, session, tags };
}

/** Places in their order, together where they are near each other: first and last of each stretch. */
function stretches(places: readonly number[]): [number, number][] {
  const found: [number, number][] = [];
  for (const place of places) {
    const last = found.at(-1);
    if (last !== undefined && place - last[1] <= GAP) last[1] = place;
    else found.push([place, place]);
  }
  return found;
}
