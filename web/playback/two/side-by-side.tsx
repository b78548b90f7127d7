import { createEffect, createMemo, createSignal, For, Show } from 'solid-js';
import { rememberSetting } from '../../asked-for.ts';
import { KeyList } from '../../keys/key-list.tsx';
import type { RecordedSession } from '../../live/recorded.ts';
import { createRequests } from '../../wall/asked/requests.ts';
import { dateText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import type { Pair, Side } from '../against/pair-of.ts';
import { TwoThrows } from '../against/two-throws.tsx';
import { Deck } from '../deck.tsx';
import { Shown } from '../deck-more.tsx';
import { keyGroups } from '../key-table.ts';
import { createThrowLink, LinkButton } from '../link-to-throw.tsx';
import { leaveFocus, listenForKeys } from '../listen-for-keys.ts';
import { createMarking } from '../marking.ts';
import { PictureRoom } from '../picture-room.tsx';
import { listAddress, placeAskedFor, rememberPlace } from '../place-in-address.ts';
import { createRecording, type RecordingModel } from '../recording-model.ts';
import { inStep } from './in-step.ts';
import './two.css';

const INDEXES = [0, 1] as const;
type Index = (typeof INDEXES)[number];

/** Two recordings with a deck each; the keys move the one that was touched last, or both together. */
export function SideBySide(props: { readonly first: RecordedSession; readonly second: RecordedSession }) {
  const speech = useSpeech();
  const say = () => speech().words.playback.besideAnother;
  const alone = [createRecording(props.first, placeAskedFor('throw')), createRecording(props.second, placeAskedFor('beside-throw'))] as const;
  rememberPlace('throw', alone[0]);
  rememberPlace('beside-throw', alone[1]);
  const [together, setTogether] = createSignal(false);
  const models = [inStep(alone[0], alone[1], together), inStep(alone[1], alone[0], together)] as const;
  const markings = [createMarking(models[0]), createMarking(models[1])] as const;
  const [active, setActive] = createSignal<Index>(0);
  const [over, setOver] = createSignal(new URLSearchParams(location.search).get('over') === '1');
  const [listed, setListed] = createSignal(false);
  const requests = createRequests();
  const link = createThrowLink(alone[0]);
  const layOver = () => {
    setOver(!over());
    rememberSetting('over', over() ? '1' : null);
  };
  const pair = createMemo((): Pair | null => {
    const [one, other] = alone.map(sideOf);
    return one && other ? [one, other] : null;
  });
  const keys = createMemo(() => {
    const model = () => models[active()];
    return keyGroups({
      playhead: () => model().state().playhead, count: () => model().state().checkpoints.facts.length, move: (move) => model().move(move), open: () => model().session().closedAtMs === null,
      show: { windows: () => requests.windows.toggle(), seamMap: () => requests.ask('seam-map'), gapLine: () => requests.ask('gap-line'), plate: () => requests.ask('plate') },
      bookmark: () => markings[active()].toggle(), copy: link.copy, list: () => setListed(true),
      two: { other: () => setActive(active() === 0 ? 1 : 0), together: () => setTogether(!together()), over: layOver },
    }, speech().words);
  });
  listenForKeys(keys);
  const named = (index: Index) => {
    const { athlete, openedAtMs, timeZone } = alone[index].session();
    return say().number(String(index + 1), athlete.name, dateText(openedAtMs, timeZone, speech().language));
  };
  createEffect(() => {
    document.title = `Offpace · ${say().title(alone[0].session().athlete.name, alone[1].session().athlete.name)}`;
  });
  return (
    <main class="two-players" onMouseDown={leaveFocus}>
      <header class="player-title">
        <a href={listAddress()}>{speech().words.playback.toList}</a>
        <For each={INDEXES}>{(index) => <a href={`/playback/${encodeURIComponent(alone[index].recorded.session)}`} aria-label={`${say().alone}: ${named(index)}`}>{named(index)}</a>}</For>
      </header>
      <Show when={over()}>
        <Show when={pair()} fallback={<p class="two-none quiet">{say().overNone}</p>}>{(two) => <div class="two-over two-throws-room"><TwoThrows pair={two()} names={[alone[0].session().athlete.name, alone[1].session().athlete.name]} onLetGo={layOver} /></div>}</Show>
      </Show>
      <For each={INDEXES}>
        {(index) => (
          <section class="half" data-mode={models[index].state().playhead.mode} data-place={models[index].view().place} data-active={active() === index} aria-label={named(index)} onPointerDown={() => setActive(index)} onFocusIn={() => setActive(index)}>
            <Show when={!over()}><PictureRoom model={models[index]} requests={requests} /></Show>
            <p class="half-name"><strong>{named(index)}</strong> <Show when={active() === index}><span class="quiet">{say().keysMove}</span></Show></p>
            <Deck model={models[index]} marking={markings[index]} held={null} label={say().controls(String(index + 1))} />
          </section>
        )}
      </For>
      <section class="deck-more">
        <button type="button" aria-pressed={together()} onClick={() => setTogether(!together())}>{say().together}</button>
        <button type="button" aria-pressed={over()} onClick={layOver}>{say().over}</button>
        <Shown requests={requests} panel={null} />
        <LinkButton link={link} />
        <button type="button" class="keys" onClick={() => setListed(true)}>{speech().words.keys.title} <kbd>?</kbd></button>
      </section>
      <KeyList groups={keys()} open={listed()} onClose={() => setListed(false)} />
    </main>
  );
}

function sideOf(model: RecordingModel): Side | null {
  const [thrown, { session }] = [model.thrown(), model.view()];
  return thrown === null || session === null ? null : { thrown, session };
}
