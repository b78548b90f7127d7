import type { MoundView } from '../../core/facts/views.ts';
import type { Freshness } from '../live/link.ts';
import { hourText, lengthText, timeText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';

/** How what is shown relates to now; each kind has a word and a border of its own. */
export type Standing =
  | { readonly kind: 'live' }
  | { readonly kind: 'connecting' }
  | { readonly kind: 'catching-up'; readonly have: number; readonly of: number }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'server-silent'; readonly sinceMs: number }
  | { readonly kind: 'device-silent'; readonly sinceMs: number }
  | { readonly kind: 'device-unknown' }
  | { readonly kind: 'closed'; readonly atMs: number }
  | { readonly kind: 'refused'; readonly code: string; readonly sentence: string }
  | { readonly kind: 'behind'; readonly seconds: number }
  | { readonly kind: 'played-back'; readonly atMs: number };

/** The standing of a live screen. What makes the picture untrue comes before what makes it quiet. */
export function standingOf(view: MoundView | null, link: Freshness): Standing {
  const closedAtMs = view?.session?.closedAtMs ?? null;
  // The Glance of a session is let go of when that closes: what it shows is the end, not a fault.
  if (closedAtMs !== null && link.refused?.code === 'not-let-in') return { kind: 'closed', atMs: closedAtMs };
  if (link.refused !== null) return { kind: 'refused', code: link.refused.code, sentence: link.refused.sentence };
  if (link.server === 'stale') return { kind: 'server-silent', sinceMs: link.sinceMs ?? 0 };
  if (view === null) return { kind: 'connecting' };
  if (link.behind !== null) return { kind: 'catching-up', ...link.behind };
  if (view.session === null) return { kind: 'waiting' };
  if (closedAtMs !== null) return { kind: 'closed', atMs: closedAtMs };
  if (link.device.verdict === 'stale') return { kind: 'device-silent', sinceMs: link.device.sinceMs };
  if (link.device.verdict === 'unknown') return { kind: 'device-unknown' };
  return { kind: 'live' };
}

/** Whether what is still shown must be dimmed: it may no longer be so. */
export function isDimmed({ kind }: Standing): boolean {
  return kind === 'server-silent' || kind === 'device-silent' || kind === 'catching-up' || kind === 'refused';
}

/** Whether it is the right to see this that has ended; every other refusal is a fault, of the server or of the address. */
export function isRightEnded(refused: { readonly code: string }): boolean {
  return refused.code === 'not-let-in' || refused.code === 'not-theirs-to-see';
}

/**
 * The word of a standing, with its time in the session's zone.
 * @param brief in fewer words and without seconds, where there is little room
 */
export function standingWords(standing: Standing, timeZone: string | null, { words: { standing: say }, language }: Speech, brief = false): string {
  const since = brief ? hourText : timeText;
  switch (standing.kind) {
    case 'live': return say.live;
    case 'connecting': return say.connecting;
    case 'catching-up': return say.catchingUp(standing.have, standing.of);
    case 'waiting': return say.waiting;
    case 'server-silent': return say.serverSilent(since(standing.sinceMs, timeZone, language));
    case 'device-silent': return (brief ? say.deviceSilentInBrief : say.deviceSilent)(since(standing.sinceMs, timeZone, language));
    case 'device-unknown': return brief ? say.deviceUnknownInBrief : say.deviceUnknown;
    case 'closed': return say.closed(hourText(standing.atMs, timeZone, language));
    case 'refused': return say.refused;
    case 'behind': return say.behindLive(lengthText(standing.seconds));
    case 'played-back': return say.playedBack(timeText(standing.atMs, timeZone, language));
  }
}
