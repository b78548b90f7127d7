import { applyChange } from '../../core/session/change.ts';
import type { MoundView } from '../../core/facts/views.ts';
import { STALE_AFTER_SECONDS } from '../../core/facts/heartbeat.ts';
import type { DeviceState, Pulse, Refusal, ViewMessage } from '../../core/facts/wire.ts';

/** What a screen knows of its mound, and how it stands with the server. */
export interface LinkState {
  readonly view: MoundView | null;
  /** The log that the view's places belong to. */
  readonly log: string | null;
  readonly connected: boolean;
  /** On this screen's clock, when the server was last heard; null before that. */
  readonly heardAtMs: number | null;
  /** Silent for longer than a pulse may take, on this screen's clock. */
  readonly silent: boolean;
  readonly pulse: Pulse | null;
  /** Newest place that the server spoke of while the view was behind it, and how often in a row. */
  readonly behindPulses: number;
  /** Views left out because this screen was slow, since it connected. */
  readonly skipped: number;
  readonly refused: Refusal | null;
  /** Raised when what arrived does not fit what is known: the screen must watch again. */
  readonly misfits: number;
}

export type LinkEvent =
  | { readonly kind: 'connected' }
  | { readonly kind: 'disconnected' }
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  | { readonly kind: 'view'; readonly message: ViewMessage; readonly atMs: number }
  | { readonly kind: 'pulse'; readonly pulse: Pulse; readonly atMs: number }
  | { readonly kind: 'tick'; readonly atMs: number }
  /** Of an earlier time, before the server was heard this time. */
  | { readonly kind: 'remembered'; readonly view: MoundView; readonly heardAtMs: number };

export const UNLINKED: LinkState = {
  view: null, log: null, connected: false, heardAtMs: null, silent: false, pulse: null, behindPulses: 0, skipped: 0, refused: null, misfits: 0,
};

/** The next state of a link. A change that does not follow the view is not applied: it raises `misfits`. */
export function nextLink(state: LinkState, event: LinkEvent): LinkState {
  switch (event.kind) {
    case 'connected': return { ...state, connected: true, refused: null, behindPulses: 0, skipped: 0 };
    case 'disconnected': return { ...state, connected: false };
    case 'refused': return { ...state, refused: event.refusal };
    case 'view': return received({ ...state, heardAtMs: event.atMs, silent: false }, event.message);
    case 'pulse': return pulsed({ ...state, heardAtMs: event.atMs, silent: false }, event.pulse);
    case 'tick': return ticked(state, event.atMs);
    // Without its log, so that the server sends everything anew.
    case 'remembered': return state.heardAtMs === null ? { ...state, view: event.view, heardAtMs: event.heardAtMs } : state;
  }
}

function received(state: LinkState, message: ViewMessage): LinkState {
  if (message.kind === 'snapshot') return { ...state, view: message.view, log: message.log, behindPulses: 0 };
  const { view, log } = state;
  if (view === null || message.log !== log) return { ...state, view: null, log: null, misfits: state.misfits + 1 };
  if (message.from !== view.place) return message.head.place <= view.place ? state : { ...state, misfits: state.misfits + 1 };
  return { ...state, view: applyChange(view, message), behindPulses: 0, skipped: state.skipped + message.skipped };
}

function pulsed(state: LinkState, pulse: Pulse): LinkState {
  const behind = state.view !== null && pulse.place > state.view.place;
  return { ...state, pulse, behindPulses: behind ? state.behindPulses + 1 : 0 };
}

function ticked(state: LinkState, atMs: number): LinkState {
  const silent = state.heardAtMs !== null && atMs - state.heardAtMs > STALE_AFTER_SECONDS * 1000;
  return silent === state.silent ? state : { ...state, silent };
}

/** How what is shown relates to now. */
export interface Freshness {
  readonly server: 'connecting' | 'fresh' | 'stale';
  /** Of the server: since when it is silent, on this screen's clock; null where that does not arise. */
  readonly sinceMs: number | null;
  readonly device: DeviceState;
  /** Places known of places there are, while catching up; null else. */
  readonly behind: { readonly have: number; readonly of: number } | null;
  readonly refused: Refusal | null;
}

/** Asked at each throw, and nearly always so. */
export function sameFreshness(a: Freshness, b: Freshness): boolean {
  return a.server === b.server && a.sinceMs === b.sinceMs && a.refused === b.refused && a.behind?.have === b.behind?.have && a.behind?.of === b.behind?.of
    && (a.device === b.device || JSON.stringify(a.device) === JSON.stringify(b.device));
}

/** The verdict on a link. The device is only as well known as the server that tells of it. */
export function freshnessOf({ view, pulse, silent, heardAtMs, connected, behindPulses, refused }: LinkState): Freshness {
  const stale = silent || (heardAtMs !== null && !connected);
  const device: DeviceState = pulse?.device ?? { verdict: 'unknown' };
  return {
    server: stale ? 'stale' : view === null ? 'connecting' : 'fresh',
    sinceMs: stale ? heardAtMs : null,
    device,
    behind: !stale && view !== null && pulse !== null && behindPulses >= 2 ? { have: view.place, of: pulse.place } : null,
    refused,
  };
}
