import { createEffect, createResource, For, Match, Show, Switch } from 'solid-js';
import type { SessionListing } from '../../core/facts/wire.ts';
import type { Stage } from '../../core/facts/vocabulary.ts';
import { askForSessions } from '../live/recorded.ts';
import { dateText, hourText } from '../words/moments.ts';
import { Speaking, useSpeech, useWords } from '../words/use-words.tsx';
import { Unanswered } from './unanswered.tsx';

/** The recorded sessions of all mounds, newest first, each a link to its playback. */
export function SessionList() {
  return <Speaking athlete={null}><Sessions /></Speaking>;
}

function Sessions() {
  const words = useWords();
  const [sessions, { refetch }] = createResource(askForSessions);
  createEffect(() => {
    document.title = `Offpace · ${words().playback.title}`;
  });
  return (
    <main class="session-list">
      <p><a href={`/${location.search}`}>{words().playback.toStart}</a></p>
      <h1>{words().playback.heading}</h1>
      <Show when={sessions()} keyed fallback={<p class="quiet">{words().playback.loading}</p>}>
        {(answer) => (
          <Switch fallback={<Unanswered sentence={answer.kind === 'refused' ? answer.sentence : words().playback.unreachable} again={() => void refetch()} />}>
            <Match when={answer.kind === 'answer' && answer.value}>
              {(listings) => <Show when={listings().length > 0} fallback={<Empty />}><Table listings={listings()} /></Show>}
            </Match>
          </Switch>
        )}
      </Show>
    </main>
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

function Table(props: { readonly listings: readonly SessionListing[] }) {
  const words = useWords();
  const column = () => words().playback.columns;
  return (
    <table>
      <thead>
        <tr><th scope="col">{column().athlete}</th><th scope="col">{column().when}</th><th scope="col">{column().stage}</th><th scope="col" class="number">{column().throws}</th><th scope="col">{column().trials}</th></tr>
      </thead>
      <tbody><For each={props.listings}>{(listing) => <Row listing={listing} />}</For></tbody>
    </table>
  );
}

function Row(props: { readonly listing: SessionListing }) {
  const speech = useSpeech();
  const words = () => speech().words;
  const stages = () => props.listing.stages.map((stage) => words().trade.stage[stage as Stage]).join(', ');
  const when = () => `${dateText(props.listing.openedAtMs, props.listing.timeZone, speech().language)}, ${hourText(props.listing.openedAtMs, props.listing.timeZone, speech().language)}`;
  return (
    <tr data-session={props.listing.id}>
      <th scope="row"><a href={`/playback/${encodeURIComponent(props.listing.id)}${location.search}`}>{props.listing.athleteName}</a></th>
      <td data-column={words().playback.columns.when}>{when()}<Show when={props.listing.closedAtMs === null}>{' '}<strong class="open-now">{words().playback.stillOpen}</strong></Show></td>
      <td data-column={words().playback.columns.stage}>{stages() === '' ? words().playback.noStage : stages()}</td>
      <td data-column={words().playback.columns.throws} class="number">{props.listing.throws}</td>
      <td data-column={words().playback.columns.trials}>{props.listing.trials.length === 0 ? words().playback.noTrials : props.listing.trials.join(' ')}</td>
    </tr>
  );
}
