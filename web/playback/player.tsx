import { createEffect, createMemo, createSignal, onCleanup, Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { momentMs } from '../../core/session/timeline.ts';
import { playBack, type PlaybackState } from '../live/playback.ts';
import type { RecordedSession } from '../live/recorded.ts';
import { rememberSetting } from '../asked-for.ts';
import type { Standing } from '../standing/standing.ts';
import { createRequests } from '../wall/asked/requests.ts';
import { MoundPicture } from '../wall/mound-picture.tsx';
import { Speaking } from '../words/use-words.tsx';
import { Deck } from './deck.tsx';
import { followGrowth } from './growth.ts';
import { keepsKey, moveOfKey } from './keys.ts';
import { NumbersPanel } from './numbers-panel.tsx';
import { createNumbersRequest } from './numbers-request.ts';
import { Title } from './title.tsx';

/** A recorded session with the Wall's own pictures and a deck to move through it. */
export function Player(props: { readonly recorded: RecordedSession }) {
  // A Player belongs to one recording; another one makes another Player.
  const { recorded } = props;
  const playback = playBack(recorded, recorded.session, placeAskedFor());
  const [state, setState] = createSignal<PlaybackState>(undefined as never, { equals: false });
  const listening = playback.state$.subscribe(setState);
  onCleanup(() => {
    listening.unsubscribe();
    playback.close();
  });
  const growth = state().recording.open ? followGrowth(recorded, (slice) => playback.grow(slice)) : null;

  const session = createMemo(() => state().checkpoints.newest.sessions[recorded.session]!);
  const moment = createMemo(() => {
    const { checkpoints: { facts }, recording: { timelineMs }, playhead: { applied, reachedMs } } = state();
    return momentMs(facts.map(({ atMs }) => atMs), timelineMs, applied, reachedMs) ?? session().openedAtMs;
  });
  const standing = createMemo((): Standing => {
    const { playhead, recording } = state();
    if (growth === null || !recording.open) return { kind: 'played-back', atMs: moment() };
    return playhead.mode === 'following' ? growth.standing() : { kind: 'behind', seconds: (growth.nowMs() - moment()) / 1000 };
  });

  const requests = createRequests();
  const numbers = createNumbersRequest();
  listenForKeys((event) => {
    if (requests.takeKey(event.key) || numbers.takeKey(event.key)) return true;
    const { playhead, checkpoints } = state();
    const move = moveOfKey(event.key, playhead, checkpoints.facts.length);
    if (move === null) return false;
    playback.move(move);
    return true;
  });
  createEffect(() => rememberPlace(state()));

  return (
    <Speaking athlete={session().athlete}>
      <main class="player" data-mode={state().playhead.mode} data-place={state().view.place}>
        <Title session={session()} mound={recorded.mound} />
        <div class="player-room">
          <div class="player-picture"><MoundPicture view={afresh(state())} standing={standing()} windows={requests.windows.asked()} picture={requests.picture()} /></div>
          <Show when={numbers.asked()}><NumbersPanel view={state().view} /></Show>
        </div>
        <Deck state={state()} moment={moment()} timeZone={session().timeZone} requests={requests} numbers={numbers} move={playback.move} foldQuiet={playback.foldQuiet} />
      </main>
    </Speaking>
  );
}

/** A jump starts every picture anew: no two jumps share a generation, whatever the facts between them did. */
function afresh({ view, playhead }: PlaybackState): MoundView {
  return { ...view, generation: playhead.generation * 1_000_000 + view.generation };
}

function placeAskedFor(): number | null {
  const asked = Number(new URLSearchParams(location.search).get('at') ?? Number.NaN);
  return Number.isInteger(asked) && asked > 0 ? asked : null;
}

/** The address says where a paused playhead stands, so that a link opens there. */
function rememberPlace({ playhead, view }: PlaybackState): void {
  if (playhead.mode === 'playing') return;
  rememberSetting('at', playhead.mode === 'following' ? null : String(view.place));
}

function listenForKeys(take: (event: KeyboardEvent) => boolean): void {
  const listen = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey || keepsKey(document.activeElement, event.key)) return;
    if (take(event)) event.preventDefault();
  };
  document.addEventListener('keydown', listen);
  onCleanup(() => document.removeEventListener('keydown', listen));
}
