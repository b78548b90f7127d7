import { createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import type { CoachSays } from '../../core/facts/coach.ts';
import type { MoundView, ThrowView } from '../../core/facts/views.ts';
import type { SayReply } from '../../core/facts/wire.ts';
import { sessionIn, type SessionEntry } from '../../core/session/ledger.ts';
import { momentMs } from '../../core/session/timeline.ts';
import { moundView } from '../../core/session/view.ts';
import { playBack, type Playback, type PlaybackState } from '../live/playback.ts';
import type { RecordedSession } from '../live/recorded.ts';
import { sayOnce } from '../live/say-once.ts';
import type { Standing } from '../standing/standing.ts';
import { createCatchUp, followGrowth, type Growth } from './growth.ts';

/** One recording on a screen: where its playhead stands, what is seen there, and what can be done with it. */
export interface RecordingModel extends Pick<Playback, 'move' | 'goTo' | 'foldQuiet'> {
  readonly recorded: RecordedSession;
  readonly state: Accessor<PlaybackState>;
  /** What is seen where the playhead stands. */
  readonly view: Accessor<MoundView>;
  /** The newest throw that is seen there; null before the first. */
  readonly thrown: Accessor<ThrowView | null>;
  /** The session as it is known by now, whatever the playhead shows. */
  readonly session: Accessor<SessionEntry>;
  /** All of its throws as they are known by now. */
  readonly throws: Accessor<readonly ThrowView[]>;
  /** The recorded moment, milliseconds since 1970. */
  readonly moment: Accessor<number>;
  readonly standing: Accessor<Standing>;
  /** Says something of this session, live or long after, and shows it once it is on disk. */
  readonly say: (says: CoachSays) => Promise<SayReply>;
}

/** @param at a place of the log to open at, paused */
export function createRecording(recorded: RecordedSession, at: number | null): RecordingModel {
  const playback = playBack(recorded, recorded.session, at);
  const [state, setState] = createSignal<PlaybackState>(undefined as never);
  const listening = playback.state$.subscribe(setState);
  onCleanup(() => {
    listening.unsubscribe();
    playback.close();
  });
  const catchUp = createCatchUp(recorded, () => state().checkpoints, playback.grow);
  const growth = state().recording.open ? followGrowth(recorded, catchUp) : null;

  const checkpoints = createMemo(() => state().checkpoints);
  const session = createMemo(() => sessionIn(checkpoints().newest, recorded.session)!);
  const moment = createMemo(() => {
    const { recording: { arrivedMs, timelineMs }, playhead: { applied, reachedMs } } = state();
    return momentMs(arrivedMs, timelineMs, applied, reachedMs) ?? session().openedAtMs;
  });
  const seen = createMemo(() => state().view);
  const generation = createMemo(() => state().playhead.generation);
  return {
    recorded, state, session, moment,
    move: playback.move, goTo: playback.goTo, foldQuiet: playback.foldQuiet,
    // A jump starts every picture anew: no two jumps share a generation, whatever the facts between them did.
    view: createMemo(() => ({ ...seen(), generation: generation() * 1_000_000 + seen().generation })),
    thrown: createMemo(() => seen().throws.at(-1) ?? null),
    throws: onceAskedFor(checkpoints, ({ newest }) => moundView(newest, recorded.session, Number.POSITIVE_INFINITY).throws),
    standing: createMemo(() => standingIn(state(), moment(), growth), undefined, { equals: saidAlike }),
    async say(says) {
      const reply = await sayOnce(recorded.mound, recorded.session, says);
      if (reply.kind === 'stored') await catchUp();
      return reply;
    },
  };
}

/** Works a value out when it is first asked for, and again when what it is made of has changed: a memo of Solid does not wait to be asked. */
function onceAskedFor<Of extends object, Value>(of: Accessor<Of>, work: (of: Of) => Value): Accessor<Value> {
  let known: { readonly of: Of; readonly value: Value } | null = null;
  return () => {
    const now = of();
    if (known?.of !== now) known = { of: now, value: work(now) };
    return known.value;
  };
}

function standingIn({ playhead, recording }: PlaybackState, momentIsMs: number, growth: Growth | null): Standing {
  if (growth === null || !recording.open) return { kind: 'played-back', atMs: momentIsMs };
  return playhead.mode === 'following' ? growth.standing() : { kind: 'behind', seconds: (growth.nowMs() - momentIsMs) / 1000 };
}

/** It is said to the second: what changes in between need not be painted. */
function saidAlike(a: Standing, b: Standing): boolean {
  if (a.kind === 'played-back' && b.kind === 'played-back') return Math.floor(a.atMs / 1000) === Math.floor(b.atMs / 1000);
  if (a.kind === 'behind' && b.kind === 'behind') return Math.round(a.seconds) === Math.round(b.seconds);
  return a === b;
}
