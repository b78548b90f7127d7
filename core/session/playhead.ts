/**
 * Where a screen stands in a recording. `applied` counts the facts that have been folded. Following keeps to the newest
 * fact of a session that is still open; playing lets recorded time pass; paused stands. Every jump leaves following.
 */
export interface Playhead {
  readonly mode: 'following' | 'playing' | 'paused';
  readonly applied: number;
  /** Timeline seconds a second. */
  readonly rate: number;
  /** How far the timeline has run, in its milliseconds; between facts it lies between theirs. */
  readonly reachedMs: number;
  /** Raised whenever facts are skipped or taken back: a chart that sees a new one clears itself. */
  readonly generation: number;
}

export type PlayheadMove =
  | { readonly kind: 'play' }
  | { readonly kind: 'pause' }
  | { readonly kind: 'follow' }
  | { readonly kind: 'rate'; readonly rate: number }
  | { readonly kind: 'seek'; readonly applied: number }
  | { readonly kind: 'step-throw'; readonly by: 1 | -1 }
  /** Real milliseconds went by. */
  | { readonly kind: 'tick'; readonly elapsedMs: number }
  /** The recording has more facts, was closed, or has another timeline. */
  | { readonly kind: 'recording-changed' };

export const SLOWEST_RATE = 0.5;
export const FASTEST_RATE = 50;

/** What the machine needs to know of a recording. */
export interface Recording {
  /** When each fact comes, in milliseconds from the first; never falling. */
  readonly timelineMs: readonly number[];
  /** For each fact whether a throw enters the session with it. */
  readonly isThrow: readonly boolean[];
  /** The session may still grow, so there is something to follow. */
  readonly open: boolean;
}

/** An open session is followed; a closed one stands before its first fact. */
export function playheadAtStart(recording: Recording): Playhead {
  const start: Playhead = { mode: 'paused', applied: 0, rate: 1, reachedMs: 0, generation: 0 };
  return recording.open ? { ...jump(start, recording.timelineMs.length, recording), mode: 'following', generation: 0 } : start;
}

/** The only way a playhead changes. Every move is legal in every mode; one that leads nowhere, or carries no number, changes nothing. */
export function movePlayhead(playhead: Playhead, move: PlayheadMove, recording: Recording): Playhead {
  switch (move.kind) {
    case 'play': return play(playhead, recording);
    case 'pause': return inMode(playhead, 'paused');
    case 'follow': return inMode(jump(playhead, recording.timelineMs.length, recording), atTheEnd(recording));
    case 'rate': return withRate(playhead, move.rate);
    case 'seek': return Number.isNaN(move.applied) ? playhead : leaveFollowing(jump(playhead, move.applied, recording));
    case 'step-throw': return inMode(jump(playhead, nextThrow(playhead.applied, move.by, recording), recording), 'paused');
    case 'tick': return playhead.mode === 'playing' && move.elapsedMs > 0 ? tick(playhead, move.elapsedMs, recording) : playhead;
    case 'recording-changed': return changed(playhead, recording);
  }
}

/** Following already lets time pass. Playing from the end begins again at the start. */
function play(playhead: Playhead, recording: Recording): Playhead {
  if (playhead.mode !== 'paused') return playhead;
  return inMode(playhead.applied >= recording.timelineMs.length ? jump(playhead, 0, recording) : playhead, 'playing');
}

/** Whoever has played up to the newest fact of an open session has caught up and follows. */
function tick(playhead: Playhead, elapsedMs: number, recording: Recording): Playhead {
  const { timelineMs } = recording;
  const reachedMs = playhead.reachedMs + elapsedMs * playhead.rate;
  let { applied } = playhead;
  while (applied < timelineMs.length && timelineMs[applied]! <= reachedMs) applied += 1;
  return applied >= timelineMs.length
    ? { ...playhead, applied, reachedMs: timelineMs.at(-1) ?? 0, mode: atTheEnd(recording) }
    : { ...playhead, applied, reachedMs };
}

function jump(playhead: Playhead, to: number, { timelineMs }: Recording): Playhead {
  const applied = Math.min(timelineMs.length, Math.max(0, Math.round(to)));
  const reachedMs = timelineMs[Math.max(0, applied - 1)] ?? 0;
  if (applied === playhead.applied) return reachedMs === playhead.reachedMs ? playhead : { ...playhead, reachedMs };
  return { ...playhead, applied, reachedMs, generation: playhead.generation + 1 };
}

function changed(playhead: Playhead, recording: Recording): Playhead {
  const { timelineMs, open } = recording;
  const newest = timelineMs.length;
  if (playhead.mode === 'following') return { ...playhead, applied: newest, reachedMs: timelineMs.at(-1) ?? 0, mode: atTheEnd({ open }) };
  const applied = Math.min(newest, playhead.applied);
  return { ...playhead, applied, reachedMs: timelineMs[Math.max(0, applied - 1)] ?? 0 };
}

function atTheEnd({ open }: Pick<Recording, 'open'>): Playhead['mode'] {
  return open ? 'following' : 'paused';
}

function inMode(playhead: Playhead, mode: Playhead['mode']): Playhead {
  return playhead.mode === mode ? playhead : { ...playhead, mode };
}

function leaveFollowing(playhead: Playhead): Playhead {
  return playhead.mode === 'following' ? { ...playhead, mode: 'paused' } : playhead;
}

function withRate(playhead: Playhead, rate: number): Playhead {
  const within = Math.min(FASTEST_RATE, Math.max(SLOWEST_RATE, rate));
  return Number.isNaN(within) || within === playhead.rate ? playhead : { ...playhead, rate: within };
}

/** To just after the next throw, or just after the one before this; the ends where there is none. */
function nextThrow(applied: number, by: 1 | -1, { isThrow }: Recording): number {
  if (by === 1) {
    const found = isThrow.indexOf(true, applied);
    return found === -1 ? isThrow.length : found + 1;
  }
  if (applied === 0) return 0;
  const latest = isThrow.lastIndexOf(true, applied - 1);
  if (latest + 1 < applied) return latest + 1;
  return latest <= 0 ? 0 : isThrow.lastIndexOf(true, latest - 1) + 1;
}
