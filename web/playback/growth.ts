import { createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import type { SessionSlice } from '../../core/session/recorded.ts';
import { nowMs } from '../live/clock.ts';
import { followPlace } from '../live/follow-place.ts';
import { askForSession, type RecordedSession } from '../live/recorded.ts';
import { useMound } from '../live/use-mound.ts';
import { standingOf, type Standing } from '../standing/standing.ts';

/** How a recording that still grows stands with the server. */
export interface Growth {
  readonly standing: Accessor<Standing>;
  /** The time on this screen's clock, to the second. */
  readonly nowMs: Accessor<number>;
}

/** Watches an open session and asks for its facts again whenever the log has gone on; one question at a time. */
export function followGrowth(recorded: RecordedSession, grow: (slice: SessionSlice) => void): Growth {
  const live = useMound(recorded.mound, recorded.session);
  const [now, setNow] = createSignal(nowMs());
  const ticking = setInterval(() => setNow(nowMs()), 1000);
  let over = false;
  onCleanup(() => {
    clearInterval(ticking);
    over = true;
  });
  followPlace(live.view, recorded.facts.at(-1)?.place ?? 0, async () => {
    const answer = await askForSession(recorded.session);
    if (answer.kind !== 'answer' || over) return false;
    grow(answer.value);
    return true;
  });
  return { standing: createMemo(() => standingOf(live.view(), live.link())), nowMs: now };
}
