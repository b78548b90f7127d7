import { createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import { checkpointsOf, grown, newestPlace, type Checkpoints } from '../../core/session/checkpoints.ts';
import { nowMs } from '../live/clock.ts';
import { followPlace } from '../live/follow-place.ts';
import { askForGrowth, askForSession, type RecordedSession } from '../live/recorded.ts';
import { useMound } from '../live/use-mound.ts';
import { standingOf, type Standing } from '../standing/standing.ts';

/** How a recording that still grows stands with the server. */
export interface Growth {
  readonly standing: Accessor<Standing>;
  /** The time on this screen's clock, to the second. */
  readonly nowMs: Accessor<number>;
}

/** Watches an open session and catches up whenever the log has gone on. */
export function followGrowth(recorded: RecordedSession, catchUp: () => Promise<boolean>): Growth {
  const live = useMound(recorded.mound, recorded.session);
  const [now, setNow] = createSignal(nowMs());
  const ticking = setInterval(() => setNow(nowMs()), 1000);
  onCleanup(() => clearInterval(ticking));
  followPlace(live.view, newestPlace(recorded), catchUp);
  return { standing: createMemo(() => standingOf(live.view(), live.link())), nowMs: now };
}

/**
 * Asks for what the log has gained behind the newest place that is known, one question at a time; for the whole recording only
 * where that cannot be told from its end.
 * @returns whether the server answered
 */
export function createCatchUp({ session, log }: RecordedSession, known: () => Checkpoints, grow: (longer: Checkpoints) => void): () => Promise<boolean> {
  let over = false;
  let last: Promise<boolean> = Promise.resolve(true);
  onCleanup(() => {
    over = true;
  });
  const ask = async (): Promise<boolean> => {
    const before = known();
    const answer = await askForGrowth(session, newestPlace(before));
    if (answer.kind !== 'answer' || over) return false;
    const longer = answer.value.log === log ? grown(before, answer.value) : null;
    if (longer !== null) {
      grow(longer);
      return true;
    }
    const whole = await askForSession(session);
    if (whole.kind !== 'answer' || over) return false;
    grow(checkpointsOf(whole.value, session));
    return true;
  };
  return () => (last = last.then(ask));
}
