import { onCleanup, onMount, Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { showsSpeed } from '../shown-speed.ts';
import type { Standing } from '../standing/standing.ts';
import { RequestButtons } from './asked/request-buttons.tsx';
import { createRequests } from './asked/requests.ts';
import { CodeButton } from './code/code-button.tsx';
import { MoundPicture } from './mound-picture.tsx';
import { createSpeedRequest, SpeedButton } from './speed-request.tsx';
import { TakeButton } from './taking/take-button.tsx';

/** The picture of a mound with what was asked for. The keys W, S, G and P show and hide the windows, the seam map, the gap line and the plate; V shows the speed of an athlete who may be under 18; Q shows the code for the athlete's phone; T saves the pictures. */
export function Requested(props: { readonly view: () => MoundView; readonly coming: () => MoundView | null; readonly standing: () => Standing; readonly controls: boolean }) {
  const requests = createRequests();
  const speed = createSpeedRequest();
  onMount(() => {
    if (!props.controls) return;
    const listen = (event: KeyboardEvent): void => {
      if (!event.ctrlKey && !event.metaKey && !event.altKey) void (requests.takeKey(event.key) || speed.takeKey(event.key));
    };
    addEventListener('keydown', listen);
    onCleanup(() => removeEventListener('keydown', listen));
  });
  const withoutSpeed = ({ session }: MoundView): boolean => session !== null && !showsSpeed(session, speed.asked());
  return (
    <>
      <MoundPicture view={props.view()} coming={props.coming()} standing={props.standing()} windows={requests.windows.asked()} picture={requests.picture()} withoutSpeed={withoutSpeed(props.view())} />
      <Show when={props.controls}>
        <RequestButtons requests={requests} />
        <CodeButton session={props.view().session} />
        <SpeedButton session={props.view().session} request={speed} />
        <TakeButton view={props.view()} standing={props.standing()} />
      </Show>
    </>
  );
}
