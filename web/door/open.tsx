import '../words/of-door.ts';
import { createResource, Match, Switch } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { openBy, type Answered } from './ask-in.ts';
import './door.css';

/** Where a code or a link leads to first: it gives the secret behind the # to the server and goes on to its screen. */
export default function Open() {
  const words = useWords();
  const secret = location.hash.slice(1);
  // Out of the address before anything else, so that no history and no picture of the screen keeps it.
  history.replaceState(null, '', location.pathname + location.search);
  const [answer, { refetch }] = createResource(async () => goOn(secret === '' ? null : await openBy(secret)));
  document.title = 'Offpace';
  return (
    <main class="door">
      <p class="start-name">Offpace</p>
      <div role="status">
        <Switch fallback={<h1>{words().door.opening}</h1>}>
          <Match when={secret === ''}><h1>{words().door.noCode}</h1></Match>
          <Match when={answer()?.kind === 'no'}><h1>{words().door.over}</h1></Match>
          <Match when={answer()?.kind === 'silent'}><h1>{words().door.unreachable}</h1><button type="button" onClick={() => void refetch()}>{words().door.again}</button></Match>
        </Switch>
      </div>
    </main>
  );
}

function goOn<T extends Answered<{ readonly to: string }> | null>(answer: T): T {
  if (answer?.kind === 'yes') location.replace(answer.value.to);
  return answer;
}
