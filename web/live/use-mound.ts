import { createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { SayReply, ScreenHello } from '../../core/facts/wire.ts';
import { connect, type Remembered } from './connection.ts';
import { freshnessOf, UNLINKED, sameFreshness, type Freshness } from './link.ts';

/** A mound as a screen sees it. */
export interface LiveMound {
  /** The newest view; null until the first has come. */
  readonly view: Accessor<MoundView | null>;
  readonly link: Accessor<Freshness>;
  /** Fingerprint of the build that the server serves; null until it was heard. */
  readonly build: Accessor<string | null>;
  readonly say: (says: CoachSays, request?: string) => Promise<SayReply>;
}

/**
 * Watches a mound for as long as the component lives; a session keeps to that session, null follows whoever has the mound.
 * @param remember what this screen still knows from an earlier time; asked where the server cannot be reached
 */
export function useMound(mound: string, session: string | null = null, hello: ScreenHello = {}, remember?: () => Remembered | null): LiveMound {
  const [state, setState] = createSignal(UNLINKED);
  const connection = connect(mound, session, hello, setState, remember);
  onCleanup(connection.close);
  return {
    view: createMemo(() => state().view),
    link: createMemo(() => freshnessOf(state()), undefined, { equals: sameFreshness }),
    build: createMemo(() => state().pulse?.build ?? null),
    say: connection.say,
  };
}

