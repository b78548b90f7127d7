import type { MoundView } from '../../../core/facts/views.ts';
import type { Remembered } from '../../live/connection.ts';

/**
 * The last state that a phone showed, so that a page which is loaded without a network has something to show. One phone keeps one
 * state, of one address: another session's takes its place, and a session that has ended leaves none.
 */
const SLOT = 'offpace-glance';
/** A session that nobody closes is not kept for ever: the server's own limit. */
const KEPT_FOR_MS = 24 * 3600_000;
/** Glance shows the last throw, or the last five at once. */
const THROWS_KEPT = 12;

interface Kept extends Remembered {
  readonly mound: string;
  /** As the address asks for it; null follows whoever has the mound. */
  readonly session: string | null;
}

/** What the browser keeps for a page; the real one may be full, or forbidden. */
type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

export interface KeptView {
  keep(view: MoundView, heardAtMs: number): void;
  /** What was kept for this address; what was kept for another, or too long ago, is thrown away. */
  read(nowMs: number): Remembered | null;
  forget(): void;
}

export function keptView(mound: string, session: string | null, store: Store): KeptView {
  const forget = (): void => quietly(() => store.removeItem(SLOT));
  return {
    forget,
    keep(view, heardAtMs) {
      const kept: Kept = { mound, session, heardAtMs, view: whatGlanceShows(view) };
      quietly(() => store.setItem(SLOT, JSON.stringify(kept)));
    },
    read(nowMs) {
      const kept = readSlot(store);
      if (kept !== null && kept.mound === mound && kept.session === session && nowMs - kept.heardAtMs < KEPT_FOR_MS) return { view: kept.view, heardAtMs: kept.heardAtMs };
      forget();
      return null;
    },
  };
}

/** Where the Glance of this phone is, as far as it keeps one. */
export function keptAddress(store: Store): string | null {
  const kept = readSlot(store);
  return kept === null ? null : glanceAddress(kept);
}

export function glanceAddress({ mound, session }: Pick<Kept, 'mound' | 'session'>): string {
  return `/glance/${encodeURIComponent(mound)}${session === null ? '' : `?session=${encodeURIComponent(session)}`}`;
}

/** Neither the coach's notes nor anybody else on the mound. */
function whatGlanceShows(view: MoundView): MoundView {
  const { session, throws } = view;
  return { ...view, session: session === null ? null : { ...session, notes: [], observations: [], triedBefore: [] }, throws: throws.slice(-THROWS_KEPT), unclaimed: [], openSessions: [] };
}

function readSlot(store: Store): Kept | null {
  try {
    return JSON.parse(store.getItem(SLOT) ?? 'null') as Kept | null;
  } catch {
    return null;
  }
}

/** A browser that keeps nothing costs the athlete nothing but the state after a reload without a network. */
function quietly(act: () => void): void {
  try {
    act();
  } catch {
    // Full or forbidden.
  }
}
