import '../words/of-pictures.ts';
import { For, Show, type JSX } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { showsSpeed } from '../shown-speed.ts';
import { RefusalWords } from '../standing/refusal.tsx';
import { StandingWord } from '../standing/frame.tsx';
import { standingOf, type Standing } from '../standing/standing.ts';
import { StillConnecting } from '../standing/still-connecting.tsx';
import { Speaking, useWords } from '../words/use-words.tsx';
import { Hanging } from './hanging.tsx';
import type { Hung } from './hung.ts';
import { kioskIn } from './kiosk.ts';
import { MoundPicture } from './mound-picture.tsx';
import { moundsOf } from './mounds-of.ts';
import { Requested } from './requested.tsx';
import { WallRoom } from './wall-room.tsx';

/** The session now, on a big screen, for coach and athlete: of one mound, or of up to four side by side. */
export default function Wall(props: { readonly mound: string }) {
  const asked = moundsOf(props.mound);
  const hung = asked.hung.map((mound): Hung => {
    const live = useMound(mound, null, { hangs: true });
    return { mound, live, standing: () => standingOf(live.view(), live.link()) };
  });
  const kiosk = kioskIn(location.search);
  document.title = `${hung.map(({ mound }) => mound).join(' + ')} · Offpace`;
  reloadOnNewBuild(() => hung[0]?.live.build() ?? null);
  return (
    <Hanging hung={hung} kiosk={kiosk}>
      <Show when={hung.length === 1 && hung[0]} fallback={<Several hung={hung} leftOut={asked.leftOut} />}>{(one) => <One hung={one()} kiosk={kiosk} />}</Show>
    </Hanging>
  );
}

/** One mound, with what was asked for beside its picture. */
function One(props: { readonly hung: Hung; readonly kiosk: boolean }) {
  return (
    <OfMound hung={props.hung}>
      {(view) => <Requested view={view} coming={props.hung.live.coming} standing={props.hung.standing} controls={!props.kiosk} />}
    </OfMound>
  );
}

/** Several mounds: plane and last throw of each. Speed that is hidden by default stays so. */
function Several(props: { readonly hung: readonly Hung[]; readonly leftOut: readonly string[] }) {
  const words = useWords();
  return (
    <div class="wall-several" data-mounds={props.hung.length}>
      <Show when={props.leftOut.length > 0}><p class="wall-note" role="note">{words().wall.leftOut(props.leftOut.join(', '))}</p></Show>
      <For each={props.hung}>
        {(hung) => (
          <OfMound hung={hung} tile>
            {(view) => <MoundPicture tile view={view()} coming={hung.live.coming()} standing={hung.standing()} windows={false} picture={null} withoutSpeed={hidesSpeed(view())} />}
          </OfMound>
        )}
      </For>
    </div>
  );
}

const hidesSpeed = ({ session }: MoundView): boolean => session !== null && !showsSpeed(session, false);

/** In the language of who throws there; before the first view, that it is on its way or why not. */
function OfMound(props: { readonly hung: Hung; readonly tile?: boolean; readonly children: (view: () => MoundView) => JSX.Element }) {
  return (
    <Speaking athlete={props.hung.live.view()?.session?.athlete ?? null}>
      <Show when={props.hung.live.view()} fallback={<NothingYet mound={props.hung.mound} standing={props.hung.standing()} tile={props.tile === true} />}>{(view) => props.children(view)}</Show>
    </Speaking>
  );
}

function NothingYet(props: { readonly mound: string; readonly standing: Standing; readonly tile: boolean }) {
  const refused = () => (props.standing.kind === 'refused' ? props.standing : null);
  return (
    <WallRoom standing={props.standing} windows={false} asked={false} tile={props.tile}>
      {() => (
        <div class="wall-empty">
          <header class="wall-head"><h1>{props.mound}</h1><StandingWord standing={props.standing} timeZone={null} /></header>
          <div class="wall-poster"><p><Show when={refused()}>{(refusal) => <RefusalWords refusal={refusal()} />}</Show></p><Show when={props.standing.kind === 'connecting'}><StillConnecting /></Show></div>
        </div>
      )}
    </WallRoom>
  );
}
