import { animationFrames, BehaviorSubject, distinctUntilChanged, EMPTY, map, merge, pairwise, scan, shareReplay, startWith, Subject, switchMap, type Observable } from 'rxjs';
import type { MoundView } from '../../core/facts/views.ts';
import { checkpointsOf, ledgerAt, recordingOf, type Checkpoints, type RecordedTimes } from '../../core/session/checkpoints.ts';
import { movePlayhead, playheadAtStart, type Playhead, type PlayheadMove } from '../../core/session/playhead.ts';
import type { SessionSlice } from '../../core/session/recorded.ts';
import { moundView } from '../../core/session/view.ts';

/** A recording as a screen shows it. */
export interface PlaybackState {
  readonly checkpoints: Checkpoints;
  readonly recording: RecordedTimes;
  readonly foldQuiet: boolean;
  readonly playhead: Playhead;
  readonly view: MoundView;
}

export interface Playback {
  readonly state$: Observable<PlaybackState>;
  move(move: PlayheadMove): void;
  /** To where the throw, or what was said, of that place of the log is first there. */
  goTo(place: number): void;
  foldQuiet(on: boolean): void;
  /** The session has grown. */
  grow(checkpoints: Checkpoints): void;
  close(): void;
}

type PlaybackEvent =
  | { readonly kind: 'move'; readonly move: PlayheadMove }
  | { readonly kind: 'go-to'; readonly place: number }
  | { readonly kind: 'fold-quiet'; readonly on: boolean }
  | { readonly kind: 'grow'; readonly checkpoints: Checkpoints };

/** A page that was hidden, or a screen that stuttered, does not play on behind the viewer's back. */
const LONGEST_FRAME_MS = 250;

/**
 * Plays a recorded session with the same folds that made it live.
 * @param at a place of the log to open at, paused; null opens a closed session at its start and follows an open one
 */
export function playBack(slice: SessionSlice, session: string, at: number | null): Playback {
  const events$ = new Subject<PlaybackEvent>();
  const mode$ = new BehaviorSubject<Playhead['mode']>('paused');
  const ticks$ = mode$.pipe(
    distinctUntilChanged(),
    switchMap((mode) => (mode === 'playing' ? framesMs() : EMPTY)),
    map((elapsedMs): PlaybackEvent => ({ kind: 'move', move: { kind: 'tick', elapsedMs } })),
  );
  const start = opened(checkpointsOf(slice, session), at);
  const state$ = merge(events$, ticks$).pipe(scan(nextPlayback, start), startWith(start), distinctUntilChanged(), shareReplay(1));
  const watching = state$.subscribe(({ playhead }) => mode$.next(playhead.mode));
  return {
    state$,
    move: (move) => events$.next({ kind: 'move', move }),
    goTo: (place) => events$.next({ kind: 'go-to', place }),
    foldQuiet: (on) => events$.next({ kind: 'fold-quiet', on }),
    grow: (checkpoints) => events$.next({ kind: 'grow', checkpoints }),
    close: () => {
      watching.unsubscribe();
      mode$.complete();
    },
  };
}

function framesMs(): Observable<number> {
  return animationFrames().pipe(
    pairwise(),
    map(([before, now]) => Math.min(LONGEST_FRAME_MS, now.timestamp - before.timestamp)),
  );
}

function opened(checkpoints: Checkpoints, at: number | null): PlaybackState {
  const recording = recordingOf(checkpoints, true);
  const start = playheadAtStart(recording);
  const playhead = at === null ? start : { ...movePlayhead(start, { kind: 'seek', applied: appliedAt(checkpoints, at) }, recording), generation: 0 };
  return { checkpoints, recording, foldQuiet: true, playhead, view: viewAt(checkpoints, playhead.applied) };
}

/** As many facts as show that place of the log: a throw that was moved in later is there only then. */
function appliedAt({ facts, entersAt }: Checkpoints, place: number): number {
  const enters = entersAt.get(place);
  if (enters !== undefined) return enters;
  const after = facts.findIndex((fact) => fact.place > place);
  return after === -1 ? facts.length : after;
}

function nextPlayback(state: PlaybackState, event: PlaybackEvent): PlaybackState {
  switch (event.kind) {
    case 'move': return moved(state, event.move);
    case 'go-to': return moved(state, { kind: 'seek', applied: appliedAt(state.checkpoints, event.place) });
    case 'fold-quiet': return rerecorded(state, state.checkpoints, event.on);
    case 'grow': return rerecorded(state, event.checkpoints, state.foldQuiet);
  }
}

function moved(state: PlaybackState, move: PlayheadMove): PlaybackState {
  const playhead = movePlayhead(state.playhead, move, state.recording);
  if (playhead === state.playhead) return state;
  const view = playhead.applied === state.playhead.applied ? state.view : viewAt(state.checkpoints, playhead.applied);
  return { ...state, playhead, view };
}

function rerecorded(state: PlaybackState, checkpoints: Checkpoints, foldQuiet: boolean): PlaybackState {
  const recording = recordingOf(checkpoints, foldQuiet);
  const playhead = movePlayhead(state.playhead, { kind: 'recording-changed' }, recording);
  return { checkpoints, recording, foldQuiet, playhead, view: viewAt(checkpoints, playhead.applied) };
}

function viewAt(checkpoints: Checkpoints, applied: number): MoundView {
  return moundView(ledgerAt(checkpoints, applied), checkpoints.session);
}
