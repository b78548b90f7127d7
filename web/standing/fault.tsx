import '../words/of-fault.ts';
import { Show } from 'solid-js';
import { render } from 'solid-js/web';
import { Speaking, useWords } from '../words/use-words.tsx';
import './standing.css';

/** Long enough to read why, and not to go round in circles. */
const ANEW_AFTER_MS = 30_000;

/**
 * Stands in place of a screen that failed: what holds, and the way on.
 * @param alone whether nobody stands at it to press a button: then it loads itself anew
 */
export function showFault(alone: boolean): void {
  if (alone) setTimeout(() => location.reload(), ANEW_AFTER_MS);
  render(() => <Speaking athlete={null}><Fault alone={alone} /></Speaking>, document.querySelector('#screen')!);
}

function Fault(props: { readonly alone: boolean }) {
  const words = useWords();
  return (
    <main>
      <div class="fault" role="alert">
        <h1>{words().fault.title}</h1>
        <p>{words().fault.safe} <Show when={props.alone}>{words().fault.bySelf}</Show></p>
        <p class="fault-ways"><button type="button" onClick={() => location.reload()}>{words().fault.loadAnew}</button> <a href="/">{words().fault.home}</a></p>
      </div>
    </main>
  );
}
