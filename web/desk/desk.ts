import { createContext, useContext, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import type { Refusal } from '../../core/facts/wire.ts';
import type { LastActs } from './last-acts.ts';

/** Where on a coach's screen something was said, so that waiting and refusals show beside it. */
export type Corner = 'intent' | 'mound' | 'opening' | 'session' | 'closing' | 'target' | 'baseline' | 'trial' | 'throws' | 'unclaimed' | 'notes' | 'arm' | 'pain' | 'feedback' | 'decision' | 'way' | 'next-day' | 'observed' | 'acts';

/** A statement that got no answer. Its request keeps its name, so that sending it again cannot store it twice. */
export interface Unsent {
  readonly corner: Corner;
  readonly says: CoachSays;
  readonly request: string;
  readonly answered: (place: number | null) => void;
}

/** What every part of a coach's screen, Bench or Plan, needs: what the server shows, and a way to say something. */
export interface Desk {
  readonly mound: string;
  readonly view: Accessor<MoundView>;
  readonly session: Accessor<SessionView | null>;
  /**
   * Says a fact; gives its place in the log once it is on disk, null when it was refused. A refusal shows in its corner. What
   * gets no answer waits there: whoever asked hears of it when it has been sent again, or let go.
   */
  readonly say: (corner: Corner, says: CoachSays) => Promise<number | null>;
  /** Says one after the other, each once the one before it is on disk; a refusal is the end. */
  readonly sayAll: (corner: Corner, all: readonly CoachSays[]) => Promise<void>;
  readonly waiting: (corner: Corner) => boolean;
  readonly refusal: (corner: Corner) => Refusal | null;
  /** Lets go of a refusal, and of what could not be sent. */
  readonly dismiss: (corner: Corner) => void;
  readonly unsent: () => readonly Unsent[];
  /** Sends again what got no answer, in its order. */
  readonly again: (corner: Corner) => Promise<void>;
  /** What was said at this desk, and the way back from it. */
  readonly lastActs: LastActs;
}

const DeskContext = createContext<Desk>();
export const DeskProvider = DeskContext.Provider;

/** The desk around this part of a coach's screen; a part without one is a bug. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === undefined) throw new Error('a part of a desk was drawn without its desk');
  return desk;
}
