import { createSignal, onCleanup, onMount, Show } from 'solid-js';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { settingsIn, withSetting } from '../settings.ts';
import { standingOf, type Standing } from '../standing/standing.ts';
import { StandingWord } from '../standing/frame.tsx';
import { Speaking, useWords } from '../words/use-words.tsx';
import { MoundPicture } from './mound-picture.tsx';
import { WallRoom } from './wall-room.tsx';

/** The session now, on a big screen, for coach and athlete. The key W shows and hides the windows. */
export default function Wall(props: { readonly mound: string }) {
  const live = useMound(props.mound);
  document.title = `${props.mound} · Offpace`;
  reloadOnNewBuild(live.build);
  const [windows, setWindows] = createSignal(settingsIn(location.search).windows);
  const toggle = (): void => {
    setWindows(!windows());
    history.replaceState(null, '', `${location.pathname}${withSetting(location.search, 'windows', windows() ? '1' : null)}`);
  };
  onMount(() => {
    const listen = (event: KeyboardEvent): void => {
      if (event.key.toLowerCase() === 'w' && !event.ctrlKey && !event.metaKey && !event.altKey) toggle();
    };
    addEventListener('keydown', listen);
    onCleanup(() => removeEventListener('keydown', listen));
  });
  const standing = () => standingOf(live.view(), live.link());
  return (
    <Speaking athlete={live.view()?.session?.athlete ?? null}>
      <main class="wall">
        <Show when={live.view()} fallback={<NothingYet mound={props.mound} standing={standing()} />}>
          {(view) => <MoundPicture view={view()} standing={standing()} windows={windows()} />}
        </Show>
        <WindowsButton shown={windows()} toggle={toggle} />
      </main>
    </Speaking>
  );
}

/** Before the first view: on its way, or why not. */
function NothingYet(props: { readonly mound: string; readonly standing: Standing }) {
  const reason = (): string => (props.standing.kind === 'refused' ? props.standing.sentence : '');
  return (
    <WallRoom standing={props.standing} windows={false}>
      {() => (
        <div class="wall-empty">
          <header class="wall-head"><h1>{props.mound}</h1><StandingWord standing={props.standing} timeZone={null} /></header>
          <div class="wall-poster"><p>{reason()}</p></div>
        </div>
      )}
    </WallRoom>
  );
}

/** There for a keyboard or a reader; unseen until it has the focus. */
function WindowsButton(props: { readonly shown: boolean; readonly toggle: () => void }) {
  const words = useWords();
  return <button type="button" class="wall-windows-button" aria-pressed={props.shown} onClick={() => props.toggle()}>{props.shown ? words().wall.windows.hide : words().wall.windows.show}</button>;
}
