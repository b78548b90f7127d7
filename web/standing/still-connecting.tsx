import { createSignal, onCleanup, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';

/** Longer than a server in the same building takes. */
const LONG_MS = 4000;

/** What to look at, once connecting has taken longer than it should. */
export function StillConnecting() {
  const words = useWords();
  const [long, setLong] = createSignal(false);
  const waiting = setTimeout(() => setLong(true), LONG_MS);
  onCleanup(() => clearTimeout(waiting));
  return <Show when={long()}><p>{words().standing.stillConnecting}</p></Show>;
}
