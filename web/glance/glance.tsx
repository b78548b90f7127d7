import '../words/of-glance.ts';
import { createEffect, createMemo, Match, Show, Switch, type JSX } from 'solid-js';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { settingsIn } from '../settings.ts';
import { StandingFrame, StandingWord } from '../standing/frame.tsx';
import { standingOf } from '../standing/standing.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { feedbackLine } from '../words/feedback-words.ts';
import { ArmQuestion } from './arm-question.tsx';
import { AskFirst } from './ask-first.tsx';
import { LastThrow } from './last-throw.tsx';
import { Pain } from './pain.tsx';
import { glanceShows, type GlanceShows } from './shows.ts';
import { Summary } from './summary.tsx';
import { createVoice, VoiceProvider } from './voice.ts';
import './glance.css';

/** Glance of one mound, on the athlete's phone: the last throw in one look, when the coach wants it shown, and how the arm feels. */
export default function Glance(props: { readonly mound: string }) {
  const live = useMound(props.mound, settingsIn(location.search).session, 'athlete');
  const voice = createVoice(live.say);
  reloadOnNewBuild(live.build);
  const standing = createMemo(() => standingOf(live.view(), live.link()));
  return (
    <Speaking athlete={live.view()?.session?.athlete ?? null}>
      <StandingFrame standing={standing()}>
        <main class="glance" data-place={live.view()?.place}>
          <Heading mound={props.mound} view={live.view()} />
          <StandingWord standing={standing()} timeZone={live.view()?.session?.timeZone ?? null} />
          <VoiceProvider value={voice}>
            <div class="glance-body" aria-live="polite">
              <Show when={live.view()}>
                {(view) => (
                  <>
                    <Unclaimed count={view().unclaimedSince} />
                    <Show when={view().session} fallback={<Waiting />}>{(session) => <Session view={view()} session={session()} />}</Show>
                  </>
                )}
              </Show>
            </div>
            <Asked session={live.view()?.session ?? null} />
          </VoiceProvider>
          <Always session={live.view()?.session ?? null} />
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
  const say = () => words().glance;
  const shows = createMemo(() => glanceShows(props.view, props.session));
  const is = <Kind extends GlanceShows['kind']>(kind: Kind) => {
    const now = shows();
    return now.kind === kind ? (now as Extract<GlanceShows, { kind: Kind }>) : null;
  };
  return (
    <Switch>
      <Match when={is('pain')}>{(pain) => <Pain session={props.session} report={pain().report} />}</Match>
      <Match when={is('throw')}>{(now) => <LastThrow thrown={now().thrown} view={props.view} session={props.session} />}</Match>
      <Match when={is('ask-first')?.thrown} keyed>{(thrown) => <AskFirst thrown={thrown} session={props.session} />}</Match>
      <Match when={is('summary')}>{(now) => <Summary throws={now().throws} onTarget={now().onTarget} judged={now().judged} view={props.view} session={props.session} />}</Match>
      <Match when={is('ready')}>{(now) => <Said lead={now().first ? words().wall.noThrow : say().ready} />}</Match>
      <Match when={is('quiet-good')}><Said lead={say().quietGood}>{say().quietGoodWhy}</Said></Match>
      <Match when={is('waits')}>{(now) => <Said lead={say().waits(now().more)}>{say().waitsWhy}</Said>}</Match>
      <Match when={is('no-feedback')}><Said lead={say().without}>{say().withoutWhy}</Said></Match>
    </Switch>
  );
}

/** Words instead of numbers. */
function Said(props: { readonly lead: string; readonly children?: JSX.Element }) {
  return (
    <div class="glance-throw">
      <p class="glance-lead">{props.lead}</p>
      <Show when={props.children}><p class="glance-sentence">{props.children}</p></Show>
    </div>
  );
}

/** Where somebody throws and no pain stands, the arm is asked about. */
function Asked(props: { readonly session: SessionView | null }) {
  const words = useWords();
  const asks = () => (props.session !== null && props.session.closedAtMs === null && props.session.armCare.kind !== 'pain-reported' ? props.session : null);
  return (
    <Show when={asks()}>
      {(session) => (
        <>
          <Show when={session().armCare.kind === 'soreness-reported'}><p class="glance-sore">{words().glance.sore}</p></Show>
          <ArmQuestion session={session()} />
        </>
      )}
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

function Always(props: { readonly session: SessionView | null }) {
  const words = useWords();
  return (
    <footer class="glance-always">
      <Show when={props.session}>{(session) => <p class="glance-mode">{feedbackLine(session().feedback, words())}</p>}</Show>
      <p>{words().glance.caution}</p>
    </footer>
  );
}
