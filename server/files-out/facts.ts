import type { Fact } from '../../core/facts/fact.ts';
import type { ThrowEntry } from '../../core/session/ledger.ts';
import { erasing, isNoWithdrawal, saysOf } from '../../core/session/about-athlete.ts';
import type { ReadableLog } from './readable-log.ts';
import { sessionsOf, type Of } from './rows.ts';
import { pagesOf } from './settled-sessions.ts';

const README = 'Every line is one fact as the log holds it: where it stands (mound, place), when it arrived (atMs, milliseconds since 1970), who said it, and what was said. Throws are in the units that their source names; everything else is SI.';

/** The first line of a file of facts. */
interface FactsReadme {
  readonly kind: 'readme';
  readonly of: Of['kind'];
  readonly athlete: string | null;
  readonly session: string | null;
  readonly log: string;
  /** How many there are: a file that was broken off has fewer. */
  readonly facts: number;
  readonly read: string;
}

/** Which facts of one mound are given out. */
interface Part {
  readonly mound: string;
  readonly through: number;
  /** A fact as it is given out; null for one that is not. */
  readonly given: (fact: Fact) => Fact | null;
}

/**
 * Facts as lines, mound by mound in the order of each log. `all` is everything that is not damaged. Of an athlete: what is about the
 * athlete, the air of the mounds, and that somebody else took the mound, not who. Of a session: the same of its own mound up to the last that has to do with the session,
 * because its baseline, target and care of the arm rest on what came before.
 * @throws {ExportFailure} for a session or athlete that the log does not know
 */
export async function factsAbout(log: ReadableLog, of: Of): Promise<{ readonly count: number; readonly lines: AsyncGenerator<string> }> {
  const { parts, athlete } = of.kind === 'all' ? { parts: log.mounds().map((mound): Part => ({ mound, through: Infinity, given: (fact) => fact })), athlete: null } : await partsAbout(log, of);
  const counted = await Promise.all(parts.map(async (part) => ({ ...part, ...(await counts(log, part)) })));
  const count = counted.reduce((sum, one) => sum + one.count, 0);
  const readme: FactsReadme = { kind: 'readme', of: of.kind, athlete, session: of.kind === 'session' ? of.id : null, log: log.id, facts: count, read: README };
  return { count, lines: linesOf(log, readme, counted) };
}

async function* linesOf(log: ReadableLog, readme: FactsReadme, parts: readonly Part[]): AsyncGenerator<string> {
  yield `${JSON.stringify(readme)}\n`;
  for (const { mound, through, given } of parts) {
    for await (const page of pagesOf(log, mound, through)) {
      const facts = page.flatMap((fact) => given(fact) ?? []);
      if (facts.length > 0) yield `${facts.map((fact) => JSON.stringify(fact)).join('\n')}\n`;
    }
  }
}

/** What is said after this was counted is not in the file. */
async function counts(log: ReadableLog, { mound, through, given }: Part): Promise<{ readonly count: number; readonly through: number }> {
  let [count, last] = [0, 0];
  for await (const page of pagesOf(log, mound, through)) {
    count += page.filter((fact) => given(fact) !== null).length;
    last = page.at(-1)!.place;
  }
  return { count, through: last };
}

type Thrown = Pick<ThrowEntry, 'place' | 'source'>;

async function partsAbout(log: ReadableLog, of: Exclude<Of, { kind: 'all' }>): Promise<{ readonly parts: Part[]; readonly athlete: string }> {
  const { athlete, onlyOn, last } = of.kind === 'athlete' ? { athlete: of.id, onlyOn: null, last: Infinity } : await whose(log, of);
  const mounds = onlyOn === null ? log.mounds() : [onlyOn];
  const known = new Map(mounds.map((mound) => [mound, { sessions: new Set<string>(), thrown: [] as Thrown[] }]));
  for await (const { mound, session, thrown } of sessionsOf({ id: log.id, mounds: () => mounds, read: (mound, after) => withoutWithdrawals(log.read(mound, after)) }, { kind: 'athlete', id: athlete })) {
    const { sessions, thrown: named } = known.get(mound)!;
    sessions.add(session.id);
    // Of a throw no more is kept than what names it.
    named.push(...thrown.flat().map(({ place, source: { device, run, sequence } }) => ({ place, source: { device, run, sequence } as Thrown['source'] })));
  }
  const parts = [...known].map(([mound, { sessions, thrown }]): Part => ({ mound, through: last, given: aloneWith(saysOf(athlete, sessions, thrown), sessions.size > 0) }));
  return { parts, athlete };
}

function* withoutWithdrawals(facts: Iterable<Fact>): Generator<Fact> {
  for (const fact of facts) if (isNoWithdrawal(fact)) yield fact;
}

/** Besides what is about the athlete, a session needs the air that its throws flew in and when it lost the mound; neither names anybody. */
function aloneWith(isAbout: (fact: Fact) => boolean, wasHere: boolean): Part['given'] {
  return (fact) => {
    if (isAbout(fact)) return fact;
    if (!wasHere) return null;
    if (fact.said.kind === 'air-set') return { ...fact, by: 'server' };
    const took = erasing(fact, fact.atMs);
    return took.tookMound ? { ...fact, by: 'server', said: took } : null;
  };
}

async function whose(log: ReadableLog, of: Extract<Of, { kind: 'session' }>): Promise<{ readonly athlete: string; readonly onlyOn: string; readonly last: number }> {
  const found = await sessionsOf(log, of).next();
  const { mound, session, lastPlace } = found.value!;
  return { athlete: session.athlete.id, onlyOn: mound, last: lastPlace };
}
