import { createMemo, type Accessor } from 'solid-js';
import { INTENTS, type Intent } from '../../../core/facts/vocabulary.ts';
import type { NextBlock } from '../../../core/facts/advice-view.ts';
import type { SessionView, ThrowView } from '../../../core/facts/views.ts';
import { useDesk } from '../../desk/desk.ts';
import { useArm } from '../arm/arm-state.ts';
import { blockOffer } from '../trial/block-offer.ts';
import { begun, draftToStart } from '../trial/draft.ts';

/** What one tap or one key says between two throws; each is null or does nothing where it may not be said. */
export interface OneTap {
  /** Whether a next throw may be spoken of: the session is open and no pain stands. */
  readonly mayGoOn: Accessor<boolean>;
  readonly intent: (intent: Intent) => void;
  /** The next block of two trials that take turns. */
  readonly block: Accessor<NextBlock | null>;
  readonly goToBlock: () => void;
  /** To the next of the open sessions, in the order of their opening. */
  readonly passOn: () => void;
  /** A new trial with the grip and cue of the last one. */
  readonly beginSame: () => void;
  readonly newest: Accessor<ThrowView | null>;
  readonly bookmark: () => void;
  /** Takes back the newest act that has not been; where that one cannot be, its line says why. */
  readonly undo: () => void;
}

export function createOneTap(session: Accessor<SessionView>): OneTap {
  const desk = useDesk();
  const arm = useArm();
  const mayGoOn = () => session().closedAtMs === null && arm()?.pain === null;
  const offer = createMemo(() => {
    const state = arm();
    return state === null ? null : blockOffer(desk.view(), session(), state.care);
  });
  /** A set without feedback is thrown to its end: no other trial in between. */
  const inSet = () => {
    const { nextDaySet, trial, feedback } = session();
    return nextDaySet?.kind === 'thrown' && nextDaySet.letter === trial?.letter && feedback.mode.kind === 'none';
  };
  const block = () => (!mayGoOn() || inSet() ? null : (offer()?.next ?? null));
  const newest = () => desk.view().throws.at(-1) ?? null;
  return {
    mayGoOn, block, newest,
    intent: (intent) => { if (mayGoOn() && INTENTS.includes(intent)) void desk.say('intent', { kind: 'intent-set', session: session().id, intent }); },
    goToBlock: () => {
      const next = block();
      if (next !== null && next.trial !== session().trial?.letter) void desk.say('intent', { kind: 'trial-resumed', session: session().id, trial: next.trial });
    },
    passOn: () => {
      const { openSessions } = desk.view();
      const next = openSessions[(openSessions.findIndex(({ active }) => active) + 1) % openSessions.length];
      if (next !== undefined && !next.active) void desk.say('mound', { kind: 'mound-passed', session: next.id });
    },
    beginSame: () => { if (mayGoOn()) void desk.say('trial', begun(session().id, draftToStart(session()))); },
    undo: () => {
      const act = desk.lastActs.acts().find((one) => desk.lastActs.undoing(one) !== 'undone');
      if (act !== undefined) void desk.lastActs.undo(act);
    },
    bookmark: () => {
      const thrown = newest();
      if (thrown !== null) void desk.say('throws', { kind: 'throw-bookmarked', session: session().id, place: thrown.place, on: !thrown.bookmarked });
    },
  };
}
