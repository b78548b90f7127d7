import '../words/of-fault.ts';
import { onMount } from 'solid-js';
import { Speaking, useWords } from '../words/use-words.tsx';
import './standing.css';

const ASKED_EVERY_MS = 5000;

/** Stands where the program of a screen did not come, on a network that went away in between, and loads the page anew once the server answers. */
export function Unloaded() {
  const words = useWords();
  onMount(askAgain);
  return (
    <Speaking athlete={null}>
      <main>
        <div class="fault" role="alert">
          <h1>{words().fault.unloaded}</h1>
          <p>{words().fault.safe} {words().fault.onceAnswered}</p>
        </div>
      </main>
    </Speaking>
  );
}

/** Not loaded anew without asking: where nothing answers, the browser would put its own page in place of this one, and that never asks. */
function askAgain(): void {
  const ask = async (): Promise<void> => {
    const answers = await fetch(location.pathname, { headers: { accept: 'text/html' }, cache: 'no-store' }).then(({ ok }) => ok, () => false);
    if (answers) location.reload();
    else askAgain();
  };
  setTimeout(() => void ask(), ASKED_EVERY_MS);
}
