import { createSignal, onCleanup, onMount, type Accessor } from 'solid-js';

/** Why a browser may let this screen go dark; null while it keeps it awake. */
export type Drowsy = 'not-secure' | 'not-supported' | 'refused' | null;

/**
 * Keeps the screen awake for as long as the component lives, and asks again whenever the page has come back into sight: a browser
 * lets go of its lock when it was hidden.
 */
export function keepAwake(): Accessor<Drowsy> {
  const [drowsy, setDrowsy] = createSignal<Drowsy>(null);
  let lock: WakeLockSentinel | null = null;
  const ask = async (): Promise<void> => {
    if (document.visibilityState !== 'visible') return;
    if (!('wakeLock' in navigator)) return void setDrowsy(isSecureContext ? 'not-supported' : 'not-secure');
    try {
      lock = await navigator.wakeLock.request('screen');
      setDrowsy(null);
    } catch {
      setDrowsy('refused');
    }
  };
  const again = (): void => void ask();
  onMount(() => {
    again();
    document.addEventListener('visibilitychange', again);
  });
  onCleanup(() => {
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  });
  return drowsy;
}
