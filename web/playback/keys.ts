import { FASTEST_RATE, SLOWEST_RATE, type Playhead, type PlayheadMove } from '../../core/session/playhead.ts';

/** The rates that a hand can choose. */
export const RATES: readonly number[] = [SLOWEST_RATE, 1, 2, 5, 10, 20, FASTEST_RATE];

/** What a key does to the playhead; null for a key without meaning here. */
export function moveOfKey(key: string, playhead: Playhead, count: number): PlayheadMove | null {
  switch (key) {
    case ' ': return playOrPause(playhead);
    case 'ArrowLeft': return { kind: 'step-throw', by: -1 };
    case 'ArrowRight': return { kind: 'step-throw', by: 1 };
    case 'ArrowUp': return { kind: 'rate', rate: RATES.find((rate) => rate > playhead.rate) ?? playhead.rate };
    case 'ArrowDown': return { kind: 'rate', rate: RATES.findLast((rate) => rate < playhead.rate) ?? playhead.rate };
    case 'Home': return { kind: 'seek', applied: 1 };
    case 'End': return { kind: 'seek', applied: count };
    case 'l':
    case 'L': return { kind: 'follow' };
    default: return null;
  }
}

export function playOrPause({ mode }: Playhead): PlayheadMove {
  return mode === 'paused' ? { kind: 'play' } : { kind: 'pause' };
}

/** Whether the element under the focus needs this key for itself. */
export function keepsKey(element: Element | null, key: string): boolean {
  if (!(element instanceof HTMLElement)) return false;
  if (element instanceof HTMLSelectElement) return key !== 'l' && key !== 'L';
  if (element instanceof HTMLInputElement && element.type === 'range') return false;
  return key === ' ' && element.matches('button, a, input, summary');
}
