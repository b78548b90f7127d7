import '../words/of-desk.ts';
import { createEffect, createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import { CoachScreen } from '../desk/coach-screen.tsx';
import { useDesk } from '../desk/desk.ts';
import { KeyList } from '../keys/key-list.tsx';
import { listenForKeys } from '../keys/listen.ts';
import { useDays } from '../live/use-days.ts';
import { useMound, type LiveMound } from '../live/use-mound.ts';
import { standingOf } from '../standing/standing.ts';
import { useWords } from '../words/use-words.tsx';
import { ArmProvider, armState } from './arm/arm-state.ts';
import { PainStands } from './arm/pain.tsx';
import { Dock } from './dock/dock.tsx';
import { createOneTap } from './dock/one-tap.ts';
import { createOpenSheet } from './dock/open-sheet.ts';
import { PassMound } from './dock/pass-mound.tsx';
import { Head } from './head.tsx';
import { keyGroups } from './keys/key-groups.ts';
import { takeKey } from './keys/take-key.ts';
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

/** The parts of a session, the dock under them, and the keys that do what their buttons do. */
function InSession(props: { readonly session: SessionView; readonly places: readonly Place[]; readonly place: Place; readonly onPlace: (place: Place) => void; readonly onAnother: () => void }) {
  const desk = useDesk();
  const words = useWords();
  const [listed, setListed] = createSignal(false);
  const oneTap = createOneTap(() => props.session);
  const sheet = createOpenSheet(() => desk.view().throws);
  listenForKeys((key) => takeKey(key, { oneTap, sheet, places: props.places, place: props.place, onPlace: props.onPlace, onList: () => setListed(true) }));
  return (
    <>
      <main class="parts">
        <ThrowsPart session={props.session} />
        <TargetPart session={props.session} />
        <TrialPart session={props.session} />
        <SessionPart session={props.session} onAnother={props.onAnother} onKeys={() => setListed(true)} />
      </main>
      <Dock session={props.session} oneTap={oneTap} sheet={sheet} places={props.places} place={props.place} onPlace={props.onPlace} onOpen={props.onAnother} />
      <KeyList groups={keyGroups(words())} open={listed()} onClose={() => setListed(false)} />
    </>
  );
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
            {(session) => <InSession session={session()} places={places()} place={place()} onPlace={setPlace} onAnother={() => setOpeningAnother(true)} />}
          </Match>
        </Switch>
      </div>
    </ArmProvider>
  );
}
