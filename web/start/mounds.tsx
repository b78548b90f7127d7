import { createResource, For, Match, Show, Switch } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { fetchMounds, type MoundListing, type MoundsFound } from './fetch-mounds.ts';
import './start.css';

/** Every mound that the server knows, with the ways to its screens. */
export function Mounds() {
  const words = useWords();
  const [mounds] = createResource(fetchMounds);
  return (
    <section aria-label={words().start.mounds}>
      <Switch fallback={<p class="quiet" role="status">{words().start.looking}</p>}>
        <Match when={mounds()?.kind === 'unreachable'}><p role="alert">{words().start.unreachable}</p></Match>
        <Match when={mounds()}>
          {(found) => <For each={listed(found())} fallback={<p class="quiet">{words().start.noMounds}</p>}>{(mound) => <Mound mound={mound} />}</For>}
        </Match>
      </Switch>
    </section>
  );
}

function listed(found: MoundsFound): readonly MoundListing[] {
  return found.kind === 'found' ? found.mounds : [];
}

function Mound(props: { readonly mound: MoundListing }) {
  const words = useWords();
  const throwing = () => props.mound.openSessions.find(({ active }) => active);
  return (
    <article class="start-mound">
      <h2>{props.mound.mound}</h2>
      <p class="quiet"><Show when={throwing()} fallback={words().standing.waiting}>{(session) => words().start.openSession(session().athleteName)}</Show></p>
      <ul>
        <For each={['wall', 'bench', 'glance', 'plan'] as const}>
          {(screen) => <li><a href={`/${screen}/${encodeURIComponent(props.mound.mound)}`}>{words().start.screens[screen]}</a> <span class="quiet">{words().start.forWhom[screen]}</span></li>}
        </For>
      </ul>
    </article>
  );
}
