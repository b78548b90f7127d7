import { createSignal, onCleanup, onMount, Show } from 'solid-js';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { settingsIn, withSetting } from '../settings.ts';
import { standingOf } from '../standing/standing.ts';
import { StandingFrame, StandingWord } from '../standing/frame.tsx';
import { Speaking, useWords } from '../words/use-words.tsx';
import { MoundPicture } from './mound-picture.tsx';
import './wall.css';

/** The session now, on a big screen, for coach and athlete. The key W shows and hides the windows. */
export default function Wall(props: { readonly mound: string }) {
  const live = useMound(props.mound);
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
        <Show when={live.view()} fallback={<StandingFrame standing={standing()}><StandingWord standing={standing()} timeZone={null} /></StandingFrame>}>
          {(view) => <MoundPicture view={view()} standing={standing()} windows={windows()} />}
        </Show>
        <WindowsButton shown={windows()} toggle={toggle} />
      </main>
    </Speaking>
  );
}

/** There for a keyboard or a reader; unseen until it has the focus. */
function WindowsButton(props: { readonly shown: boolean; readonly toggle: () => void }) {
  const words = useWords();
  return <button type="button" class="wall-windows-button" aria-pressed={props.shown} onClick={() => props.toggle()}>{props.shown ? words().wall.windows.hide : words().wall.windows.show}</button>;
}
