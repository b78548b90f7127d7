import type { CoachSays } from '../facts/coach.ts';
import type { MoundView, SessionView, ThrowView } from '../facts/views.ts';

/**
 * What of a view a statement speaks of, as it stands there: the same text before and after means that nothing of it has
 * changed. Null for a statement that leaves nothing behind that could be put back.
 */
export function touched(says: CoachSays, view: MoundView): string | null {
  if (says.kind === 'mound-passed') return JSON.stringify(view.openSessions.find(({ active }) => active)?.id ?? null);
  if (says.kind === 'air-set') return JSON.stringify(view.air?.air ?? null);
  const parts = view.session === null ? null : (ofThrows(says, view.throws) ?? ofSession(says, view.session));
  return parts === null ? null : JSON.stringify(parts);
}

function ofThrows(says: CoachSays, throws: readonly ThrowView[]): unknown[] | null {
  const each = (places: readonly number[], read: (thrown: ThrowView) => unknown): unknown[] => places.map((place) => {
    const thrown = throws.find((one) => one.place === place);
    return thrown === undefined ? 'not here' : read(thrown);
  });
  switch (says.kind) {
    case 'throws-excluded':
    case 'throws-restored': return each(says.places, ({ excluded }) => excluded);
    case 'throws-tagged': return each(says.places, ({ intent, trial }) => [intent, trial]);
    case 'throw-bookmarked': return each([says.place], ({ bookmarked }) => bookmarked);
    case 'throws-moved': return each(says.places, () => 'here');
    case 'throws-claimed': return throws.flatMap(({ place }) => (place <= says.through ? [place] : []));
    default: return null;
  }
}

function ofSession(says: CoachSays, session: SessionView): unknown[] | null {
  const { intent, trial, stage, armCare } = session;
  switch (says.kind) {
    case 'intent-set': return [intent];
    case 'trial-begun':
    case 'trial-resumed':
    case 'trial-left': return [trial?.letter ?? null, intent];
    case 'stage-set': return [stage, session.distanceM, session.effort];
    case 'observation-ticked': return [trial?.letter ?? null, tickOf(says, session)];
    case 'zone-set':
    case 'zone-removed': return [stage, session.zone, session.speedBand];
    case 'note-written': return session.notes.flatMap((note) => (note.text === says.text && note.place === says.place ? [note.written] : []));
    case 'feedback-set': return [session.feedback.mode, session.feedback.askFirst];
    case 'decision-set': return [session.decision];
    case 'gate-set': return [session.progress.stages.find((one) => one.stage === says.stage)?.gate];
    case 'count-planned': return [session.plannedThrows, armCare.dayMostFrom, armCare.dayMost];
    case 'comfort-said': return [stage, trial?.letter ?? null, session.comfort?.comfortable ?? null];
    default: return null;
  }
}

/** Not ticked where nobody said. */
function tickOf({ what, place }: Extract<CoachSays, { kind: 'observation-ticked' }>, { observations, trial }: SessionView): boolean {
  const last = observations.findLast((one) => one.what === what && one.place === place && one.trial === (trial?.letter ?? null));
  return last?.seen ?? false;
}
