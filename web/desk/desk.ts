import { createContext, useContext, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import type { Refusal } from '../../core/facts/wire.ts';

/** Where on a coach's screen something was said, so that waiting and refusals show beside it. */
export type Corner = 'intent' | 'mound' | 'opening' | 'session' | 'closing' | 'target' | 'baseline' | 'trial' | 'throws' | 'unclaimed' | 'notes' | 'arm' | 'pain' | 'feedback' | 'decision' | 'way' | 'next-day' | 'observed';

/** What every part of a coach's screen, Bench or Plan, needs: what the server shows, and a way to say something. */
export interface Desk {
  readonly mound: string;
  readonly view: Accessor<MoundView>;
  readonly session: Accessor<SessionView | null>;
  /** Says a fact; gives its place in the log once it is on disk, null when it was refused. A refusal shows in its corner. */
  readonly say: (corner: Corner, says: CoachSays) => Promise<number | null>;
  /** Says one after the other, each once the one before it is on disk; a refusal is the end. */
  readonly sayAll: (corner: Corner, all: readonly CoachSays[]) => Promise<void>;
  readonly waiting: (corner: Corner) => boolean;
  readonly refusal: (corner: Corner) => Refusal | null;
  readonly dismiss: (corner: Corner) => void;
}

const DeskContext = createContext<Desk>();
export const DeskProvider = DeskContext.Provider;

/** The desk around this part of a coach's screen; a part without one is a bug. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === undefined) throw new Error('a part of a desk was drawn without its desk');
  return desk;
}
