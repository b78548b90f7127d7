import { createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { SayReply, ScreenHello } from '../../core/facts/wire.ts';
import { connect, type Remembered } from './connection.ts';
import { markFirst } from './mark-first.ts';
import { freshnessOf, UNLINKED, sameFreshness, type Freshness } from './link.ts';

/** A mound as a screen sees it. */
export interface LiveMound {
  /** The newest view; null until the first has come. */
  readonly view: Accessor<MoundView | null>;
  /** The newest view of one more throw, a frame before it is `view`: its mark need not wait for all that is said of it. Null before that, and where that was not asked for. */
  readonly coming: Accessor<MoundView | null>;
  readonly link: Accessor<Freshness>;
  /** Fingerprint of the build that the server serves; null until it was heard. */
  readonly build: Accessor<string | null>;
  readonly say: (says: CoachSays, request?: string) => Promise<SayReply>;
}

/**
 * Watches a mound for as long as the component lives; a session keeps to that session, null follows whoever has the mound.
 * @param hello what hangs on a wall is told of a throw's mark first
 * @param remember what this screen still knows from an earlier time; asked where the server cannot be reached
 */
export function useMound(mound: string, session: string | null = null, hello: ScreenHello = {}, remember?: () => Remembered | null): LiveMound {
  const [state, setState] = createSignal(UNLINKED);
  const [coming, setComing] = createSignal<MoundView | null>(null);
  const connection = connect(mound, session, hello, hello.hangs === true ? markFirst(setState, setComing) : setState, remember);
  onCleanup(connection.close);
  return {
    view: createMemo(() => state().view),
    coming,
    link: createMemo(() => freshnessOf(state()), undefined, { equals: sameFreshness }),
    build: createMemo(() => state().pulse?.build ?? null),
    say: connection.say,
  };
}

