/**
 * Where a screen stands in a recording. `applied` counts the facts that have been folded. Following keeps to the newest
 * fact of a session that still grows; playing lets recorded time pass; paused stands. Any move by hand leaves following.
 */
export interface Playhead {
  readonly mode: 'following' | 'playing' | 'paused';
  readonly applied: number;
  readonly count: number;
  /** Recorded seconds a second. */
  readonly rate: number;
  /** Recorded time reached, milliseconds since 1970; between facts it lies between theirs. */
  readonly clockMs: number;
  /** Raised by every jump: a chart that sees a new one clears itself. */
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
  /** The recording grew. */
  | { readonly kind: 'grow' };

export const SLOWEST_RATE = 0.5;
export const FASTEST_RATE = 50;

/** What the machine needs to know of a recording: when each fact arrived, and which are throws. */
export interface Recording {
  readonly timesMs: readonly number[];
  /** For each fact whether it measured a throw. */
  readonly isThrow: readonly boolean[];
}

/** Paused before the first fact. */
export function playheadAtStart(recording: Recording): Playhead {
  return { mode: 'paused', applied: 0, count: recording.timesMs.length, rate: 1, clockMs: recording.timesMs[0] ?? 0, generation: 0 };
}

/** The only way a playhead changes. Every move is legal in every mode; one that leads nowhere changes nothing. */
export function movePlayhead(playhead: Playhead, move: PlayheadMove, recording: Recording): Playhead {
  switch (move.kind) {
    case 'play': return play(playhead, recording);
    case 'pause': return playhead.mode === 'paused' ? playhead : { ...playhead, mode: 'paused' };
    case 'follow': return { ...jump(playhead, recording.timesMs.length, recording), mode: 'following' };
    case 'rate': return { ...playhead, rate: Math.min(FASTEST_RATE, Math.max(SLOWEST_RATE, move.rate)) };
    case 'seek': return leaveFollowing(jump(playhead, move.applied, recording));
    case 'step-throw': return { ...jump(playhead, nextThrow(playhead.applied, move.by, recording), recording), mode: 'paused' };
    case 'tick': return playhead.mode === 'playing' ? tick(playhead, move.elapsedMs, recording) : playhead;
    case 'grow': return grow(playhead, recording);
  }
}

/** Playing from the end begins again at the start. */
function play(playhead: Playhead, recording: Recording): Playhead {
  if (playhead.mode === 'playing') return playhead;
  const from = playhead.applied >= recording.timesMs.length ? jump(playhead, 0, recording) : playhead;
  return { ...from, mode: 'playing' };
}

function tick(playhead: Playhead, elapsedMs: number, { timesMs }: Recording): Playhead {
  const clockMs = playhead.clockMs + elapsedMs * playhead.rate;
  let applied = playhead.applied;
  while (applied < timesMs.length && timesMs[applied]! <= clockMs) applied += 1;
  return applied >= timesMs.length
    ? { ...playhead, applied, clockMs: timesMs.at(-1) ?? clockMs, mode: 'paused' }
    : { ...playhead, applied, clockMs };
}

function jump(playhead: Playhead, to: number, { timesMs }: Recording): Playhead {
  const applied = Math.min(timesMs.length, Math.max(0, Math.round(to)));
  const clockMs = timesMs[Math.max(0, applied - 1)] ?? playhead.clockMs;
  return { ...playhead, applied, clockMs, count: timesMs.length, generation: playhead.generation + 1 };
}

function leaveFollowing(playhead: Playhead): Playhead {
  return playhead.mode === 'following' ? { ...playhead, mode: 'paused' } : playhead;
}

/** To just after the next throw, or just after the one before this; the ends where there is none. */
function nextThrow(applied: number, by: 1 | -1, { isThrow }: Recording): number {
  if (by === 1) {
    const found = isThrow.indexOf(true, applied);
    return found === -1 ? isThrow.length : found + 1;
  }
  const latest = isThrow.lastIndexOf(true, Math.max(0, applied - 1));
  if (applied === 0 || latest === -1) return 0;
  if (latest + 1 < applied) return latest + 1;
  const before = latest === 0 ? -1 : isThrow.lastIndexOf(true, latest - 1);
  return before + 1;
}

function grow(playhead: Playhead, { timesMs }: Recording): Playhead {
  const count = timesMs.length;
  if (playhead.mode !== 'following') return { ...playhead, count };
  return { ...playhead, count, applied: count, clockMs: timesMs.at(-1) ?? playhead.clockMs };
}
