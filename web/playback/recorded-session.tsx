import { createResource, Match, Show, Switch } from 'solid-js';
import { askForSession, type Unheard } from '../live/recorded.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { Player } from './player.tsx';
import { Unanswered } from './unanswered.tsx';

/** One recorded session: asked for, then played; or why it cannot be. */
export function RecordedSession(props: { readonly session: string }) {
  const words = useWords();
  const [session, { refetch }] = createResource(() => props.session, askForSession);
  return (
    <Show when={session()} keyed fallback={<main class="session-list"><h1>{words().playback.title}</h1><p class="quiet" role="status">{words().playback.loading}</p></main>}>
      {(answer) => (
        <Switch fallback={<Unplayable unheard={answer as Unheard} again={() => void refetch()} />}>
          <Match when={answer.kind === 'answer' && answer.value} keyed>{(recorded) => <Player recorded={recorded} />}</Match>
        </Switch>
      )}
    </Show>
  );
}

function Unplayable(props: { readonly unheard: Unheard; readonly again: () => void }) {
  return <Speaking athlete={null}><Explained {...props} /></Speaking>;
}

function Explained(props: { readonly unheard: Unheard; readonly again: () => void }) {
  const words = useWords();
  return (
    <main class="session-list">
      <p><a href={`/playback${location.search}`}>{words().playback.toList}</a></p>
      <h1>{words().playback.gone}</h1>
      <Unanswered {...props} />
    </main>
  );
}
