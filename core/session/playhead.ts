/**
 * Where a screen stands in a recording. `applied` counts the facts that have come: at least the first, since there is nothing
 * to see before it. Following keeps to the newest
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
  /** Played over and over: from when `from` facts have come until `to` have. Null plays through to the end. */
  readonly part: Part | null;
}

/** A part of a recording, in facts that have come; `from` is never after `to`. */
interface Part {
  readonly from: number;
  readonly to: number;
}

export type PlayheadMove =
  | { readonly kind: 'play' }
  | { readonly kind: 'pause' }
  | { readonly kind: 'follow' }
  | { readonly kind: 'rate'; readonly rate: number }
  | { readonly kind: 'seek'; readonly applied: number }
  /** To any point of the timeline, and to stay exactly there: the hand on the scrubber. */
  | { readonly kind: 'scrub'; readonly reachedMs: number }
  | { readonly kind: 'step-throw'; readonly by: 1 | -1 }
  /** Over and over from here, up to the end set before or the newest fact. */
  | { readonly kind: 'part-from-here' }
  /** Over and over up to here, from the beginning set before or the first fact. */
  | { readonly kind: 'part-to-here' }
  | { readonly kind: 'whole' }
  /** Real milliseconds went by. */
  | { readonly kind: 'tick'; readonly elapsedMs: number }
  /** The recording has more facts, was closed, or has another timeline. */
  | { readonly kind: 'recording-changed' };

export const SLOWEST_RATE = 0.5;
export const FASTEST_RATE = 50;
/** How long the last fact of a part is seen before the part begins again, on the timeline, unless the next comes sooner. House rule. */
const PART_RESTS_MS = 2000;

/** What the machine needs to know of a recording. */
export interface Recording {
  /** When each fact comes, in milliseconds from the first; never falling. */
  readonly timelineMs: readonly number[];
  /** For each fact whether a throw enters the session with it. */
  readonly isThrow: readonly boolean[];
  /** The session may still grow, so there is something to follow. */
  readonly open: boolean;
}

/** An open session is followed; a closed one stands at its first fact. */
export function playheadAtStart(recording: Recording): Playhead {
  const { timelineMs, open } = recording;
  const start: Playhead = { mode: 'paused', applied: Math.min(1, timelineMs.length), rate: 1, reachedMs: 0, generation: 0, part: null };
  return open ? { ...start, mode: 'following', applied: timelineMs.length, reachedMs: timelineMs.at(-1) ?? 0 } : start;
}

/** The only way a playhead changes. Every move is legal in every mode; one that leads nowhere, or carries no number, changes nothing. */
export function movePlayhead(playhead: Playhead, move: PlayheadMove, recording: Recording): Playhead {
  switch (move.kind) {
    case 'play': return play(playhead, recording);
    case 'pause': return inMode(playhead, 'paused');
    case 'follow': return inMode(jump(playhead, recording.timelineMs.length, recording), atTheEnd(recording));
    case 'rate': return withRate(playhead, move.rate);
    case 'seek': return Number.isNaN(move.applied) ? playhead : leaveFollowing(jump(playhead, move.applied, recording));
    case 'scrub': return Number.isNaN(move.reachedMs) ? playhead : leaveFollowing(scrub(playhead, move.reachedMs, recording));
    case 'step-throw': return inMode(jump(playhead, nextThrow(playhead.applied, move.by, recording), recording), 'paused');
    case 'part-from-here': return withPart(playhead, { from: playhead.applied, to: endOf(playhead, recording) });
    case 'part-to-here': return withPart(playhead, { from: beginningOf(playhead), to: playhead.applied });
    case 'whole': return playhead.part === null ? playhead : { ...playhead, part: null };
    case 'tick': return playhead.mode === 'playing' && move.elapsedMs > 0 ? tick(playhead, move.elapsedMs, recording) : playhead;
    case 'recording-changed': return changed(playhead, recording);
  }
}

/** Following already lets time pass. Playing from the end begins again at the start. */
function play(playhead: Playhead, recording: Recording): Playhead {
  if (playhead.mode !== 'paused') return playhead;
  return inMode(playhead.applied >= recording.timelineMs.length ? jump(playhead, playhead.part?.from ?? 1, recording) : playhead, 'playing');
}

function withPart(playhead: Playhead, part: Part): Playhead {
  return part.from === playhead.part?.from && part.to === playhead.part.to ? playhead : { ...playhead, part };
}

/** An end that would come before its beginning is none. */
function endOf({ part, applied }: Playhead, { timelineMs }: Recording): number {
  return part !== null && part.to > applied ? part.to : timelineMs.length;
}

function beginningOf({ part, applied }: Playhead): number {
  return part !== null && part.from < applied ? part.from : Math.min(1, applied);
}

/** Whoever has played up to the newest fact of an open session has caught up and follows. */
function tick(playhead: Playhead, elapsedMs: number, recording: Recording): Playhead {
  const { timelineMs } = recording;
  const reachedMs = playhead.reachedMs + elapsedMs * playhead.rate;
  const again = begunAgain(playhead, reachedMs, timelineMs);
  if (again !== null) return moved(playhead, comeBy(again, timelineMs), again);
  const applied = Math.max(playhead.applied, comeBy(reachedMs, timelineMs));
  return applied >= timelineMs.length
    ? { ...playhead, applied, reachedMs: timelineMs.at(-1) ?? 0, mode: atTheEnd(recording) }
    : { ...playhead, applied, reachedMs };
}

/** Where on the timeline a part that has been played out goes on; null while it has not, and for whoever has gone beyond it. */
function begunAgain({ part, reachedMs: beforeMs }: Playhead, reachedMs: number, timelineMs: readonly number[]): number | null {
  if (part === null) return null;
  const fromMs = timelineMs[part.from - 1] ?? 0;
  const lastMs = timelineMs[part.to - 1] ?? 0;
  const toMs = Math.min(lastMs + PART_RESTS_MS, timelineMs[part.to] ?? lastMs);
  if (toMs <= fromMs || beforeMs >= toMs || reachedMs < toMs) return null;
  return fromMs + ((reachedMs - fromMs) % (toMs - fromMs));
}

/** How many facts have come by a point of the timeline. */
function comeBy(reachedMs: number, timelineMs: readonly number[]): number {
  const after = timelineMs.findIndex((timeMs) => timeMs > reachedMs);
  return after === -1 ? timelineMs.length : after;
}

function jump(playhead: Playhead, to: number, { timelineMs }: Recording): Playhead {
  const applied = Math.min(timelineMs.length, Math.max(1, Math.round(to)));
  return moved(playhead, applied, timelineMs[applied - 1] ?? 0);
}

function scrub(playhead: Playhead, to: number, { timelineMs }: Recording): Playhead {
  const reachedMs = Math.min(timelineMs.at(-1) ?? 0, Math.max(0, to));
  return moved(playhead, comeBy(reachedMs, timelineMs), reachedMs);
}

function moved(playhead: Playhead, applied: number, reachedMs: number): Playhead {
  if (applied === playhead.applied) return reachedMs === playhead.reachedMs ? playhead : { ...playhead, reachedMs };
  return { ...playhead, applied, reachedMs, generation: playhead.generation + 1 };
}

function changed(playhead: Playhead, recording: Recording): Playhead {
  const { timelineMs, open } = recording;
  const newest = timelineMs.length;
  if (playhead.mode === 'following') return { ...playhead, applied: newest, reachedMs: timelineMs.at(-1) ?? 0, mode: atTheEnd({ open }) };
  const applied = Math.min(newest, Math.max(1, playhead.applied));
  const [cameMs, nextMs] = [timelineMs[applied - 1] ?? 0, timelineMs[applied] ?? timelineMs.at(-1) ?? 0];
  const stays = playhead.reachedMs >= cameMs && playhead.reachedMs <= nextMs;
  return { ...playhead, applied, reachedMs: stays ? playhead.reachedMs : cameMs };
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
