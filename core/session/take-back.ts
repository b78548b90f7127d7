import type { CoachSays } from '../facts/coach.ts';
import type { MoundView, SessionView } from '../facts/views.ts';

/**
 * How something that a coach said is taken back: by saying again what stood before. Facts are never edited, so this is
 * nothing but further facts. Some statements have no honest inverse: `stays` for what cannot be unsaid, `nothing-before`
 * where there is no earlier state to say, `too-many` where not all of it can be seen from here.
 */
export type TakeBack =
  | { readonly kind: 'back'; readonly says: readonly CoachSays[] }
  | { readonly kind: 'never'; readonly because: 'stays' | 'nothing-before' | 'too-many' };

const back = (...says: readonly CoachSays[]): TakeBack => ({ kind: 'back', says });
const NOTHING_BEFORE: TakeBack = { kind: 'never', because: 'nothing-before' };
const STAYS: TakeBack = { kind: 'never', because: 'stays' };

/**
 * @param before the view in which it was said
 * @param place where the log holds it
 */
export function takeBack(says: CoachSays, before: MoundView, place: number): TakeBack {
  const { session, air } = before;
  if (says.kind === 'air-set') return air === null ? NOTHING_BEFORE : back({ kind: 'air-set', air: air.air });
  if (session === null) return STAYS;
  switch (says.kind) {
    case 'mound-passed': return session.active ? back({ kind: 'mound-passed', session: session.id }) : NOTHING_BEFORE;
    case 'note-written': return back({ kind: 'note-withdrawn', session: says.session, note: place });
    case 'throw-bookmarked': return back({ ...says, on: !says.on });
    case 'throws-excluded':
    case 'throws-restored': return back(...exclusionsOf(says.session, says.places, before));
    case 'throws-tagged': return back(...tagsOf(says.session, says.places, before));
    case 'throws-moved': return back({ kind: 'throws-moved', places: says.places, session: session.id, from: says.session });
    case 'throws-claimed': return unclaim(says, before);
    default: return inSession(says, session);
  }
}

function inSession(says: CoachSays, session: SessionView): TakeBack {
  const { id, intent, stage, distanceM, effort, zone, speedBand, feedback, decision, comfort, armCare } = session;
  switch (says.kind) {
    case 'intent-set': return intent === null ? NOTHING_BEFORE : back({ kind: 'intent-set', session: id, intent });
    case 'trial-begun':
    case 'trial-resumed':
    case 'trial-left': return back(...trialOf(session));
    case 'stage-set': return back({ kind: 'stage-set', session: id, stage, distanceM, effort });
    case 'zone-set':
    case 'zone-removed': return back(zone === null ? { kind: 'zone-removed', session: id, reason: 'taken back' } : { kind: 'zone-set', session: id, zone, speedBand, reason: null });
    case 'observation-ticked': return back({ ...says, seen: !says.seen });
    case 'feedback-set': return back({ kind: 'feedback-set', session: id, mode: feedback.mode, askFirst: feedback.askFirst });
    case 'decision-set': return back({ kind: 'decision-set', session: id, ...decision });
    case 'gate-set': {
      const gate = session.progress.stages.find((one) => one.stage === says.stage)?.gate;
      return gate === undefined ? NOTHING_BEFORE : back({ kind: 'gate-set', session: id, stage: says.stage, gate });
    }
    case 'count-planned': return back({ kind: 'count-planned', session: id, throws: session.plannedThrows, dayMost: armCare.dayMostFrom === 'own-rule' ? armCare.dayMost : null });
    case 'comfort-said': return comfort === null ? NOTHING_BEFORE : back({ kind: 'comfort-said', session: id, from: says.from, comfortable: comfort.comfortable });
    default: return STAYS;
  }
}

/** The trial that was on, or none, and what was meant besides it. */
function trialOf({ id, trial, intent }: SessionView): CoachSays[] {
  const resumed: CoachSays = trial === null ? { kind: 'trial-left', session: id } : { kind: 'trial-resumed', session: id, trial: trial.letter };
  return intent === null || intent === trial?.intent ? [resumed] : [resumed, { kind: 'intent-set', session: id, intent }];
}

function exclusionsOf(session: string, places: readonly number[], before: MoundView): CoachSays[] {
  return grouped(places, (place) => before.throws.find((thrown) => thrown.place === place)?.excluded ?? null).map(([reason, some]) =>
    reason === null ? { kind: 'throws-restored', session, places: some } : { kind: 'throws-excluded', session, places: some, reason });
}

function tagsOf(session: string, places: readonly number[], before: MoundView): CoachSays[] {
  const tag = (place: number): string => {
    const thrown = before.throws.find((one) => one.place === place);
    return JSON.stringify([thrown?.intent ?? null, thrown?.trial ?? null]);
  };
  return grouped(places, tag).map(([text, some]) => {
    const [intent, trial] = JSON.parse(text) as [SessionView['intent'], string | null];
    return { kind: 'throws-tagged', session, places: some, intent, trial };
  });
}

/** What is alike is said in one statement. */
function grouped<K>(places: readonly number[], read: (place: number) => K): [K, number[]][] {
  const groups = new Map<K, number[]>();
  for (const place of places) groups.set(read(place), [...(groups.get(read(place)) ?? []), place]);
  return [...groups];
}

function unclaim({ session, through }: Extract<CoachSays, { kind: 'throws-claimed' }>, { unclaimed, unclaimedCount }: MoundView): TakeBack {
  if (unclaimedCount > unclaimed.length) return { kind: 'never', because: 'too-many' };
  const places = unclaimed.flatMap(({ place }) => (place <= through ? [place] : []));
  return back({ kind: 'throws-moved', places, session: null, from: session });
}
