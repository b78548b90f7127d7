import { createResource, ErrorBoundary, Match, Show, Switch } from 'solid-js';
import { askForSession, UNREADABLE } from '../live/recorded.ts';
import { useWords } from '../words/use-words.tsx';
import { Player } from './player.tsx';
import { Unplayable } from './unplayable.tsx';

/** One recorded session: asked for, then played; or why it cannot be. */
export function RecordedSession(props: { readonly session: string }) {
  const words = useWords();
  const [session, { refetch }] = createResource(() => props.session, askForSession);
  const unreadable = (error: unknown) => {
    reportError(error);
    return <Unplayable unheard={UNREADABLE} again={() => void refetch()} />;
  };
  return (
    <Show when={session()} keyed fallback={<main class="session-list"><h1>{words().playback.title}</h1><p class="quiet" role="status">{words().playback.loading}</p></main>}>
      {(answer) => (
        <Switch>
          <Match when={answer.kind === 'answer' && answer.value} keyed>{(recorded) => <ErrorBoundary fallback={unreadable}><Player recorded={recorded} /></ErrorBoundary>}</Match>
          <Match when={answer.kind !== 'answer' && answer} keyed>{(failed) => <Unplayable unheard={failed} again={() => void refetch()} />}</Match>
        </Switch>
      )}
    </Show>
  );
}
