import { createEffect, createSignal, For, Match, Show, Switch } from 'solid-js';
import type { SessionsFound } from '../../../core/facts/session-search.ts';
import type { Unheard } from '../../live/recorded.ts';
import { withSetting } from '../../settings.ts';
import { Speaking, useSpeech, useWords } from '../../words/use-words.tsx';
import { Unanswered } from '../unanswered.tsx';
import { createFound } from './found.ts';
import { FIELDS, questionOf, settingsOnly, typedIn, withTyped, type Typed } from './question.ts';
import { SearchForm } from './search-form.tsx';
import { SessionRows, type LeadTo } from './session-rows.tsx';

/** The recorded sessions of all mounds, newest first, found by what is typed; each leads to its playback, or beside the one that asked for another. */
export function SessionList() {
  return <Speaking athlete={null}><Sessions /></Speaking>;
}

function Sessions() {
  const speech = useSpeech();
  const words = () => speech().words;
  const beside = new URLSearchParams(location.search).get('beside');
  const [typed, setTyped] = createSignal(typedIn(location.search));
  const found = createFound((skip) => questionOf(typed(), skip, words()));
  createEffect(() => {
    document.title = `Offpace · ${words().playback.title}`;
  });
  const type = (next: Typed) => {
    setTyped(next);
    history.replaceState(null, '', `${location.pathname}${withTyped(location.search, next)}`);
  };
  const search = () => withSetting(settingsOnly(location.search), 'beside', null);
  const to: LeadTo = (session, place) => {
    const query = withSetting(search(), beside === null ? 'throw' : 'beside-throw', place === null ? null : String(place));
    return beside === null ? `/playback/${encodeURIComponent(session)}${query}` : `/playback/${encodeURIComponent(beside)}${withSetting(query, 'beside', session)}`;
  };
  return (
    <main class="session-list">
      <p><a href={beside === null ? `/${search()}` : `/playback/${encodeURIComponent(beside)}${search()}`}>{beside === null ? words().playback.toStart : words().playback.search.back}</a></p>
      <h1>{beside === null ? words().playback.heading : words().playback.search.choose}</h1>
      <SearchForm typed={typed()} onTyped={type} />
      <Show when={found.answer()} keyed fallback={<p class="quiet">{words().playback.loading}</p>}>
        {(answer) => (
          <Switch fallback={<Unanswered unheard={answer as Unheard} again={found.again} />}>
            <Match when={answer.kind === 'answer' && answer.value}>{(sessions) => <Results found={sessions()} typed={typed()} to={to} onTyped={type} more={found.more} />}</Match>
          </Switch>
        )}
      </Show>
    </main>
  );
}

function Results(props: { readonly found: SessionsFound; readonly typed: Typed; readonly to: LeadTo; readonly onTyped: (typed: Typed) => void; readonly more: () => void }) {
  const words = useWords();
  const asked = () => FIELDS.some((field) => props.typed[field] !== '');
  const left = () => props.found.total - props.found.sessions.length;
  return (
    <Show when={props.found.sessions.length > 0} fallback={<Show when={asked()} fallback={<Empty />}><NoMatch {...props} /></Show>}>
      <p class="quiet" role="status">{words().playback.search.found(props.found.total)}</p>
      <SessionRows found={props.found.sessions} to={props.to} />
      <Show when={left() > 0}><p><button type="button" onClick={() => props.more()}>{words().playback.search.more(Math.min(25, left()))}</button></p></Show>
    </Show>
  );
}

function Empty() {
  const words = useWords();
  return (
    <section class="teaching">
      <p><strong>{words().playback.none}</strong></p>
      <p class="quiet">{words().playback.noneWhy}</p>
    </section>
  );
}

/** Says which of what was asked keeps sessions away, each with a way to ask without it. */
function NoMatch(props: { readonly found: SessionsFound; readonly typed: Typed; readonly onTyped: (typed: Typed) => void }) {
  const words = useWords();
  const say = () => words().playback.search;
  const helps = () => FIELDS.filter((field) => (props.found.without[field] ?? 0) > 0);
  return (
    <section class="teaching">
      <p role="status"><strong>{say().nothing}</strong></p>
      <div class="without"><For each={helps()}>{(field) => <button type="button" onClick={() => props.onTyped({ ...props.typed, [field]: '' })}>{say().without(say().fields[field], say().found(props.found.without[field]!))}</button>}</For></div>
      <p class="quiet">{say().nothingWhy}</p>
    </section>
  );
}
