import { createResource, For, Match, Show, Switch } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { fetchMounds, type MoundListing, type MoundsFound } from './mounds.ts';
import { Athletes } from './athletes.tsx';
import './start.css';

/** All mounds with their screens, and the way to the recordings. */
export default function Start() {
  const words = useWords();
  const [mounds] = createResource(fetchMounds);
  document.title = 'Offpace';
  return (
    <main class="start">
      <header>
        <p class="start-name">Offpace</p>
        <h1>{words().start.job}</h1>
      </header>
      <section aria-label={words().start.mounds}>
        <Switch>
          <Match when={mounds()?.kind === 'unreachable'}><p role="alert">{words().start.unreachable}</p></Match>
          <Match when={mounds()}>
            {(found) => <For each={listed(found())} fallback={<p class="quiet">{words().start.noMounds}</p>}>{(mound) => <Mound mound={mound} />}</For>}
          </Match>
        </Switch>
      </section>
      <Athletes />
      <OtherMound />
      <p class="start-recorded"><a href="/playback">{words().start.recorded}</a></p>
    </main>
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

/** A mound that has not been heard of yet can be opened by its name. */
function OtherMound() {
  const words = useWords();
  const go = (event: SubmitEvent): void => {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget as HTMLFormElement).get('mound') ?? '').trim();
    if (name !== '') location.assign(`/bench/${encodeURIComponent(name)}`);
  };
  return (
    <form class="start-other" onSubmit={go}>
      <label>{words().start.other} <input name="mound" required pattern="[A-Za-z0-9][A-Za-z0-9._\-]{0,63}" autocomplete="off" placeholder="north-1" /></label>
      <button type="submit">{words().start.open}</button>
    </form>
  );
}
