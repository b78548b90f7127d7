import '../words/of-pictures.ts';
import { onCleanup, onMount, Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { standingOf, type Standing } from '../standing/standing.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { StandingWord } from '../standing/frame.tsx';
import { Speaking } from '../words/use-words.tsx';
import { RequestButtons } from './asked/request-buttons.tsx';
import { createRequests } from './asked/requests.ts';
import { CodeButton } from './code/code-button.tsx';
import { showsSpeed } from '../shown-speed.ts';
import { MoundPicture } from './mound-picture.tsx';
import { createSpeedRequest, SpeedButton } from './speed-request.tsx';
import { WallRoom } from './wall-room.tsx';

/** The session now, on a big screen, for coach and athlete. The keys W, S, G and P show and hide the windows, the seam map, the gap line and the plate; V shows the speed of an athlete who may be under 18; Q shows the code for the athlete's phone. */
export default function Wall(props: { readonly mound: string }) {
  const live = useMound(props.mound);
  document.title = `${props.mound} · Offpace`;
  reloadOnNewBuild(live.build);
  const requests = createRequests();
  const speed = createSpeedRequest();
  onMount(() => {
    const listen = (event: KeyboardEvent): void => {
      if (!event.ctrlKey && !event.metaKey && !event.altKey) void (requests.takeKey(event.key) || speed.takeKey(event.key));
    };
    addEventListener('keydown', listen);
    onCleanup(() => removeEventListener('keydown', listen));
  });
  const withoutSpeed = ({ session }: MoundView): boolean => session !== null && !showsSpeed(session, speed.asked());
  const standing = () => standingOf(live.view(), live.link());
  return (
    <Speaking athlete={live.view()?.session?.athlete ?? null}>
      <main class="wall">
        <Show when={live.view()} fallback={<NothingYet mound={props.mound} standing={standing()} />}>
          {(view) => <MoundPicture view={view()} standing={standing()} windows={requests.windows.asked()} picture={requests.picture()} withoutSpeed={withoutSpeed(view())} />}
        </Show>
        <RequestButtons requests={requests} />
        <CodeButton session={live.view()?.session ?? null} />
        <SpeedButton session={live.view()?.session ?? null} request={speed} />
      </main>
    </Speaking>
  );
}

/** Before the first view: on its way, or why not. */
function NothingYet(props: { readonly mound: string; readonly standing: Standing }) {
  const refused = () => (props.standing.kind === 'refused' ? props.standing : null);
  return (
    <WallRoom standing={props.standing} windows={false} asked={false}>
      {() => (
        <div class="wall-empty">
          <header class="wall-head"><h1>{props.mound}</h1><StandingWord standing={props.standing} timeZone={null} /></header>
          <div class="wall-poster"><p><Show when={refused()}>{(refusal) => <RefusalWords refusal={refusal()} />}</Show></p></div>
        </div>
      )}
    </WallRoom>
  );
}
