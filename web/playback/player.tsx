import { createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import type { RecordedSession } from '../live/recorded.ts';
import { KeyList } from '../keys/key-list.tsx';
import { withSetting } from '../settings.ts';
import { TakeOut } from '../taking-out/take-out.tsx';
import { createRequests } from '../wall/asked/requests.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { createHeld } from './against/held.ts';
import type { Pair } from './against/pair-of.ts';
import { TwoThrows } from './against/two-throws.tsx';
import { Deck } from './deck.tsx';
import { DeckMore } from './deck-more.tsx';
import { keyGroups } from './key-table.ts';
import { createThrowLink, LinkButton } from './link-to-throw.tsx';
import { leaveFocus, listenForKeys } from './listen-for-keys.ts';
import { createMarking } from './marking.ts';
import { NotesPanel } from './notes-panel.tsx';
import { NumbersPanel } from './numbers-panel.tsx';
import { createPanelRequest } from './panel-request.ts';
import { PictureRoom } from './picture-room.tsx';
import { placeAskedFor, rememberPlace } from './place-in-address.ts';
import { createRecording, type RecordingModel } from './recording-model.ts';
import { Title } from './title.tsx';
import { VideoPanel, type FilmKeys } from './video/video-panel.tsx';

/** A recorded session with the Wall's own pictures and a deck to move through it. */
export function Player(props: { readonly recorded: RecordedSession }) {
  // A Player belongs to one recording; another one makes another Player.
  const model = createRecording(props.recorded, placeAskedFor('throw'));
  rememberPlace('throw', model);
  return <Speaking athlete={model.session().athlete}><OnePlayer model={model} /></Speaking>;
}

function OnePlayer(props: { readonly model: RecordingModel }) {
  const { model } = props;
  const words = useWords();
  const requests = createRequests();
  const panel = createPanelRequest();
  const marking = createMarking(model);
  const held = createHeld(model);
  const pair = createMemo((): Pair | null => {
    const [one, thrown, { session }] = [held.side(), model.thrown(), model.view()];
    return one === null || thrown === null || session === null || thrown.place === one.thrown.place ? null : [one, { thrown, session }];
  });
  const link = createThrowLink(model);
  const [filmKeys, setFilmKeys] = createSignal<FilmKeys | null>(null);
  const [listed, setListed] = createSignal(false);
  let noteLine: HTMLInputElement | null = null;
  let room: HTMLElement | undefined;
  const keys = createMemo(() => keyGroups({
    playhead: () => model.state().playhead, count: () => model.state().checkpoints.facts.length, move: model.move, open: () => model.session().closedAtMs === null,
    show: { windows: () => requests.windows.toggle(), seamMap: () => requests.ask('seam-map'), gapLine: () => requests.ask('gap-line'), plate: () => requests.ask('plate'), numbers: () => panel.ask('numbers'), notes: () => panel.ask('notes'), video: () => panel.ask('video'), hold: held.toggle },
    ...(panel.asked() === 'video' && filmKeys() !== null ? { video: filmKeys()! } : {}),
    bookmark: marking.toggle,
    write: () => {
      panel.open('notes');
      noteLine?.focus();
    },
    copy: link.copy, list: () => setListed(true),
  }, words()));
  listenForKeys(keys);
  return (
    <main class="player" data-mode={model.state().playhead.mode} data-place={model.view().place} onMouseDown={leaveFocus}>
      <Title session={model.session()} mound={model.recorded.mound} />
      <div class="player-room" ref={(element) => { room = element; }}>
        <Show when={pair()} fallback={<PictureRoom model={model} requests={requests} />}>
          {(two) => <div class="two-throws-room"><TwoThrows pair={two()} names={null} onLetGo={held.toggle} /></div>}
        </Show>
        <Switch>
          <Match when={panel.asked() === 'numbers'}><NumbersPanel view={model.view()} /></Match>
          <Match when={panel.asked() === 'video'}><VideoPanel model={model} held={() => held.side()?.thrown ?? null} keys={setFilmKeys} /></Match>
          <Match when={panel.asked() === 'notes'}><NotesPanel model={model} marking={marking} line={(input) => { noteLine = input; }} /></Match>
        </Switch>
      </div>
      <Deck model={model} marking={marking} held={held.place()} />
      <DeckMore model={model} requests={requests} panel={panel}>
        <button type="button" aria-pressed={held.place() !== null} onClick={() => held.toggle()}>{held.side() === null ? words().playback.hold : words().playback.held(words().trade.throwNumber(held.side()!.thrown.number))}</button>
        <Show when={held.side() !== null && pair() === null}><p class="quiet">{words().playback.against.another(words().trade.throwNumber(held.side()!.thrown.number))}</p></Show>
        <a class="as-button" href={`/playback${withSetting('', 'beside', model.recorded.session)}`}>{words().playback.beside}</a>
        <LinkButton link={link} />
        <TakeOut view={model.view()} standing={model.standing()} session={model.recorded.session} picturesIn={() => room ?? null} />
        <button type="button" class="keys" onClick={() => setListed(true)}>{words().keys.title} <kbd>?</kbd></button>
      </DeckMore>
      <KeyList groups={keys()} open={listed()} onClose={() => setListed(false)} />
    </main>
  );
}
