import { baselinesOf, NO_FASTBALLS, withFastball, type FastballBaseline, type FastballReading, type FastballRuns } from '../coaching/baseline.ts';
import type { Athlete } from '../facts/coach.ts';
import { STAGES, type Stage } from '../facts/vocabulary.ts';
import type { BaselinesByStage } from './brought.ts';
import { sessionIn, thrownBy, type Ledger, type SessionEntry, type ThrowEntry, type Thrown } from './ledger.ts';
import { knownOf, type Owner } from './memory.ts';
import { rememberedFold } from './remembered-fold.ts';

/** Whether a throw of this session counts as the athlete's fastball. */
export function isFastball(entry: ThrowEntry, { id, athlete }: Owner): boolean {
  return entry.tags[id]?.intent === athlete.mainFastball;
}

/** A fastball that a baseline may rest on; null for any other throw. Of the same throw of the same session it is the same object. */
export function fastballReading(entry: ThrowEntry, owner: Owner): FastballReading | null {
  if (entry.tags[owner.id]?.excluded !== null || !isFastball(entry, owner)) return null;
  const known = knownOf(entry, owner);
  const { place, atMs } = entry;
  if (known.fastball?.place === place && known.fastball.atMs === atMs) return known.fastball;
  const { speedMps, verticalM, armSideM, flightTimeS, releaseHeightM, releaseArmSideM, path } = known.analysed;
  if (typeof speedMps !== 'number' || typeof verticalM !== 'number' || typeof armSideM !== 'number') return null;
  known.fastball = { place, atMs, speedMps, verticalM, armSideM, flightTimeS, releaseHeightM, releaseArmSideM, path };
  return known.fastball;
}

type ByStage<T> = Readonly<Partial<Record<Stage, T>>>;

interface SessionFastballs {
  readonly owner: Pick<SessionEntry, 'id' | 'athlete' | 'renewals'>;
  readonly renewals: ByStage<readonly number[]>;
  readonly stages: ByStage<FastballRuns>;
}

const folded = rememberedFold<SessionFastballs>((state, entry) => {
  const reading = fastballReading(entry, state.owner);
  if (reading === null) return state;
  const { owner, renewals, stages } = state;
  const { stage } = entry.tags[owner.id]!;
  return { owner, renewals, stages: { ...stages, [stage]: withFastball(stages[stage] ?? NO_FASTBALLS, reading, renewals[stage] ?? []) } };
});

const starts = new WeakMap<Athlete, SessionFastballs>();

/** The same object for the same session and renewals, so that the fold is remembered. */
function startOf({ id, athlete, renewals }: SessionEntry): SessionFastballs {
  const known = starts.get(athlete);
  if (known !== undefined && known.owner.id === id && known.owner.renewals === renewals) return known;
  const start: SessionFastballs = { owner: { id, athlete, renewals }, stages: {}, renewals: Object.fromEntries(STAGES.map((stage) => [stage, renewals.filter((one) => one.stage === stage).map(({ place }) => place)])) };
  starts.set(athlete, start);
  return start;
}

/** The fastballs of a session, stage by stage; a stage without is not in it. */
export function fastballsIn(thrown: Thrown, session: SessionEntry): ByStage<FastballRuns> {
  return folded(thrown, startOf(session)).stages;
}

/** The baselines of this session in one stage, oldest first. */
export function sessionBaselines(thrown: Thrown, session: SessionEntry, stage: Stage): FastballBaseline[] {
  return baselinesOver(fastballsIn(thrown, session), session, stage);
}

/** The same from its fastballs. */
export function baselinesOver(fastballs: ByStage<FastballRuns>, session: SessionEntry, stage: Stage): FastballBaseline[] {
  return baselinesOf(stage, fastballs[stage] ?? NO_FASTBALLS, startOf(session).renewals[stage] ?? [], session.baselinesGiven[stage] ?? 0);
}

/** A baseline of this session by its number, of its own or the one that it brought; undefined without it. */
export function baselineNumbered(thrown: Thrown, session: SessionEntry, stage: Stage, number: number): FastballBaseline | undefined {
  return [session.earlier[stage], ...sessionBaselines(thrown, session, stage)].find((one) => one?.number === number);
}

/** The newest baseline of every stage that a session came to itself. */
export function newestOwn(thrown: Thrown, session: SessionEntry): BaselinesByStage {
  return Object.fromEntries(STAGES.flatMap((stage) => {
    const last = sessionBaselines(thrown, session, stage).at(-1);
    return last === undefined ? [] : [[stage, last]];
  }));
}

/**
 * Newest baseline of every stage that an athlete brings along from this mound. The newest by the time of its throws: a session
 * out of a file stands late in the log and was thrown early.
 */
export function earlierBaselines(ledger: Ledger, athlete: string): BaselinesByStage {
  const own = ledger.order.flatMap((id) => {
    const session = sessionIn(ledger, id);
    return session === undefined || session.athlete.id !== athlete || session.partly === true ? [] : [ledger.away[id]?.baselines ?? newestOwn(thrownBy(ledger, id), session)];
  });
  return newestOf([ledger.athletes[athlete]?.baselines ?? {}, ...own]);
}

/** Of every stage the newest. */
export function newestOf(all: readonly BaselinesByStage[]): BaselinesByStage {
  const newest: Partial<Record<Stage, FastballBaseline>> = {};
  for (const one of all.flatMap((stages) => Object.values(stages))) if (isNewer(one, newest[one.stage])) newest[one.stage] = one;
  return newest;
}

function isNewer(one: FastballBaseline, other: FastballBaseline | undefined): boolean {
  return other === undefined || one.atMs > other.atMs || (one.atMs === other.atMs && one.number > other.number);
}
