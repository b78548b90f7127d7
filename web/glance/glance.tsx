import { createEffect, createMemo, Show } from 'solid-js';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { StandingFrame, StandingWord } from '../standing/frame.tsx';
import { standingOf } from '../standing/standing.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { LastThrow } from './last-throw.tsx';
import { newUnclaimed } from './said.ts';
import './glance.css';

/** Glance of one mound: the last throw in one look, on the athlete's phone. */
export default function Glance(props: { readonly mound: string }) {
  const live = useMound(props.mound);
  reloadOnNewBuild(live.build);
  const standing = createMemo(() => standingOf(live.view(), live.link()));
  return (
    <Speaking athlete={live.view()?.session?.athlete ?? null}>
      <StandingFrame standing={standing()}>
        <main class="glance" data-place={live.view()?.place}>
          <Heading mound={props.mound} view={live.view()} />
          <StandingWord standing={standing()} timeZone={live.view()?.session?.timeZone ?? null} />
          <div class="glance-body" aria-live="polite">
            <Show when={live.view()}>
              {(view) => (
                <>
                  <Unclaimed count={newUnclaimed(view())} />
                  <Show when={view().session} fallback={<Waiting />}>{(session) => <Session view={view()} session={session()} />}</Show>
                </>
              )}
            </Show>
          </div>
          <Always />
        </main>
      </StandingFrame>
    </Speaking>
  );
}

function Heading(props: { readonly mound: string; readonly view: MoundView | null }) {
  const words = useWords();
  createEffect(() => {
    document.title = `Offpace · ${words().glance.title(props.mound)}`;
  });
  return <h1>{props.view?.session?.athlete.name ?? props.mound}</h1>;
}

function Session(props: { readonly view: MoundView; readonly session: SessionView }) {
  const words = useWords();
  return (
    <Show when={props.view.throws.at(-1)} fallback={<p class="glance-lead">{words().wall.noThrow}</p>}>
      {(thrown) => <LastThrow thrown={thrown()} view={props.view} session={props.session} />}
    </Show>
  );
}

function Waiting() {
  const words = useWords();
  return <p class="glance-lead">{words().standing.waitingSession}</p>;
}

function Unclaimed(props: { readonly count: number }) {
  const words = useWords();
  return (
    <Show when={props.count > 0}>
      <p class="glance-unclaimed" data-unclaimed={props.count}><strong>{words().trade.unclaimed(props.count)}</strong> {words().glance.unclaimedWhy}</p>
    </Show>
  );
}

function Always() {
  const words = useWords();
  return (
    <footer class="glance-always">
      <p>{words().glance.feedback}</p>
      <p>{words().glance.caution}</p>
    </footer>
  );
}
