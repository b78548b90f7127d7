import '../words/of-desk.ts';
import { createEffect, createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { CoachScreen } from '../desk/coach-screen.tsx';
import { useDays } from '../live/use-days.ts';
import { useMound, type LiveMound } from '../live/use-mound.ts';
import { standingOf } from '../standing/standing.ts';
import { useWords } from '../words/use-words.tsx';
import { ArmProvider, armState } from './arm/arm-state.ts';
import { PainStands } from './arm/pain.tsx';
import { Dock } from './dock/dock.tsx';
import { PassMound } from './dock/pass-mound.tsx';
import { Head } from './head.tsx';
import { Opening } from './opening/opening.tsx';
import { placeIn, placesIn, shownIn, useColumns, type Place } from './places.ts';
import { SessionPart } from './session/session.tsx';
import { TargetPart } from './target/target.tsx';
import { ThrowsPart } from './throws/throws.tsx';
import { Unclaimed } from './throws/unclaimed.tsx';
import { TrialPart } from './trial/trial.tsx';
import './bench.css';

/** The coach's screen of one mound: everything that is said about a throw, a trial, a target. */
export default function Bench(props: { readonly mound: string }) {
  const live = useMound(props.mound);
  return <div class="bench-screen"><CoachScreen mound={props.mound} live={live}>{(view) => <At mound={props.mound} live={live} view={view()} />}</CoachScreen></div>;
}

function At(props: { readonly mound: string; readonly live: LiveMound; readonly view: MoundView }) {
  const words = useWords();
  const columns = useColumns();
  const [chosen, setPlace] = createSignal<Place>('throws');
  const closed = () => props.view.session?.closedAtMs !== null;
  const places = () => placesIn(columns(), closed());
  const place = () => placeIn(places(), chosen());
  const [openingAnother, setOpeningAnother] = createSignal(false);
  const days = useDays(() => props.view.session?.athlete.id ?? null, () => props.view.place);
  const arm = createMemo(() => (props.view.session === null ? null : armState(props.view.session, props.mound, days())));
  createEffect(() => { document.title = words().bench.frame.title(props.mound); });
  return (
    <ArmProvider value={arm}>
      <div class="bench" data-shows={shownIn(columns(), place()).join(' ')}>
        <div class="bench-top">
          <Head standing={standingOf(props.view, props.live.link())} link={props.live.link()} />
          <Show when={!openingAnother() && props.view.session}>{(session) => <PainStands session={session()} />}</Show>
        </div>
        <Switch>
          <Match when={props.view.session === null || openingAnother()}>
            <main class="one">
              <Show when={props.view.session === null}><Unclaimed session={null} /><PassMound /></Show>
              <Opening onBack={props.view.session === null ? null : () => setOpeningAnother(false)} onOpened={() => setOpeningAnother(false)} />
            </main>
          </Match>
          <Match when={props.view.session}>
            {(session) => (
              <>
                <main class="parts">
                  <ThrowsPart session={session()} />
                  <TargetPart session={session()} />
                  <TrialPart session={session()} />
                  <SessionPart session={session()} onAnother={() => setOpeningAnother(true)} />
                </main>
                <Dock session={session()} places={places()} place={place()} onPlace={setPlace} onOpen={() => setOpeningAnother(true)} />
              </>
            )}
          </Match>
        </Switch>
      </div>
    </ArmProvider>
  );
}
