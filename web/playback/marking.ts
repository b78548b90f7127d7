import { createMemo, createSignal, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { Refusal } from '../../core/facts/wire.ts';
import { thrownBy } from '../../core/session/ledger.ts';
import { throwAt } from '../../core/session/thrown.ts';
import type { RecordingModel } from './recording-model.ts';

/** Bookmarks and notes said from Playback: facts of the session, like those said while it was thrown. */
export interface Marking {
  readonly bookmarked: Accessor<boolean>;
  /** Marks the throw that is shown, or takes its bookmark off. */
  readonly toggle: () => void;
  readonly takeOff: (place: number) => void;
  /** Gives whether it is on disk. A note about no throw is about the session. */
  readonly write: (text: string, place: number | null) => Promise<boolean>;
  /** Why the last one was not stored. */
  readonly refusal: Accessor<Refusal | null>;
}

export function createMarking(model: RecordingModel): Marking {
  const [refusal, setRefusal] = createSignal<Refusal | null>(null);
  const { session } = model.recorded;
  const say = async (says: CoachSays): Promise<boolean> => {
    const reply = await model.say(says);
    setRefusal(reply.kind === 'refused' ? reply : null);
    return reply.kind === 'stored';
  };
  const bookmarked = createMemo(() => {
    const shown = model.thrown();
    const known = shown === null ? undefined : throwAt(thrownBy(model.state().checkpoints.newest, session), shown.place);
    return known?.tags[session]?.bookmarked === true;
  });
  const mark = (place: number, on: boolean) => void say({ kind: 'throw-bookmarked', session, place, on });
  return {
    bookmarked, refusal,
    toggle: () => {
      const thrown = model.thrown();
      if (thrown !== null) mark(thrown.place, !bookmarked());
    },
    takeOff: (place) => mark(place, false),
    write: (text, place) => say({ kind: 'note-written', session, text, place }),
  };
}
