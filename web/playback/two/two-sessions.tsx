import { createResource, Match, Show, Switch } from 'solid-js';
import type { Athlete } from '../../../core/facts/coach.ts';
import { askForSession, type RecordedSession } from '../../live/recorded.ts';
import { Speaking, useWords } from '../../words/use-words.tsx';
import { Unplayable } from '../unplayable.tsx';
import { SideBySide } from './side-by-side.tsx';

/** Two recorded sessions: both asked for, then played side by side; or why one of them cannot be. */
export function TwoSessions(props: { readonly first: string; readonly second: string }) {
  const words = useWords();
  const [both, { refetch }] = createResource(() => Promise.all([askForSession(props.first), askForSession(props.second)]));
  return (
    <Show when={both()} keyed fallback={<main class="session-list"><h1>{words().playback.title}</h1><p class="quiet" role="status">{words().playback.loading}</p></main>}>
      {([one, other]) => (
        <Switch>
          <Match when={one.kind !== 'answer' && one} keyed>{(failed) => <Unplayable unheard={failed} again={() => void refetch()} />}</Match>
          <Match when={other.kind !== 'answer' && other} keyed>{(failed) => <Unplayable unheard={failed} again={() => void refetch()} />}</Match>
          <Match when={one.kind === 'answer' && other.kind === 'answer' && ([one.value, other.value] as const)} keyed>
            {([first, second]) => <Speaking athlete={athleteOf(first)}><SideBySide first={first} second={second} /></Speaking>}
          </Match>
        </Switch>
      )}
    </Show>
  );
}

/** Language and units are those of the first athlete for both: two that are compared are said in one way. */
function athleteOf({ facts }: RecordedSession): Athlete | null {
  const said = facts[0]?.said;
  return said?.kind === 'session-opened' ? said.athlete : null;
}
