import '../words/of-glance.ts';
import { createEffect, createMemo, Match, Show, Switch, type JSX } from 'solid-js';
import type { FeedbackView } from '../../core/facts/feedback-view.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import { nowMs } from '../live/clock.ts';
import { keepAwake, type Awake } from '../live/keep-awake.ts';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound } from '../live/use-mound.ts';
import { settingsIn } from '../settings.ts';
import { showsSpeed, speedAskedFor } from '../shown-speed.ts';
import { StandingFrame, StandingWord } from '../standing/frame.tsx';
import { isDimmed, isRightEnded, standingOf, type Standing } from '../standing/standing.ts';
import { basisWords, modeLine } from '../words/feedback-words.ts';
import { Speaking, useSpeech, useWords } from '../words/use-words.tsx';
import { AloudButton } from './aloud/aloud-button.tsx';
import { aloudOf } from './aloud/aloud-text.ts';
import { useAloud } from './aloud/use-aloud.ts';
import { ArmQuestion } from './arm-question.tsx';
import { AskFirst } from './ask-first.tsx';
import { installable } from './kept/installable.ts';
import { keepLast } from './kept/keep-last.ts';
import { keptView } from './kept/kept-view.ts';
import { keepPage } from './kept/use-worker.ts';
import { LastThrow } from './last-throw.tsx';
import { Pain } from './pain.tsx';
import { ThisPhone } from './phone/this-phone.tsx';
import { glanceShows, type GlanceShows } from './shows.ts';
import { Summary } from './summary.tsx';
import { createVoice, VoiceProvider } from './voice.ts';
import './glance.css';

/** Glance of one mound, on the athlete's phone: the last throw in one look, when the coach wants it shown, and how the arm feels. */
export default function Glance(props: { readonly mound: string }) {
  const asked = settingsIn(location.search).session;
  const kept = keptView(props.mound, asked, localStorage);
  const live = useMound(props.mound, asked, { speaker: 'athlete' }, () => kept.read(nowMs()));
  const voice = createVoice(live.say);
  keepLast(live, kept);
  keepPage(() => live.link().server === 'fresh');
  installable();
  reloadOnNewBuild(live.build);
  const standing = createMemo(() => standingOf(live.view(), live.link()));
  /** What was shown before the right to see it ended is shown no longer. */
  const view = () => (isEnded(standing()) ? null : live.view());
  const awake = keepAwake(() => view()?.session?.closedAtMs === null);
  return (
    <Speaking athlete={view()?.session?.athlete ?? null}>
      <StandingFrame standing={standing()}>
        <VoiceProvider value={voice}>
          <Shown mound={props.mound} view={view()} standing={standing()} awake={awake()} />
        </VoiceProvider>
      </StandingFrame>
    </Speaking>
  );
}

function Shown(props: { readonly mound: string; readonly view: MoundView | null; readonly standing: Standing; readonly awake: Awake }) {
  const speech = useSpeech();
  const session = () => props.view?.session ?? null;
  const aloud = useAloud(() => {
    const [view, own] = [props.view, session()];
    // What may no longer be so is read by nobody but the eye that sees it dimmed.
    if (view === null || own === null || isDimmed(props.standing)) return null;
    return aloudOf(glanceShows(view, own), own, showsSpeed(own, speedAskedFor(location.search)), speech());
  }, () => speech().language);
  return (
    <main class="glance" data-place={props.view?.place}>
      <header class="glance-head">
        <Heading mound={props.mound} view={props.view} />
        <StandingWord standing={props.standing} timeZone={session()?.timeZone ?? null} />
      </header>
      <div class="glance-body" aria-live="polite">
        <Show when={props.view} fallback={<NoView standing={props.standing} />}>
          {(view) => (
            <>
              <Unclaimed count={view().unclaimedSince} />
              <Show when={view().session} fallback={<Waiting />}>{(own) => <Session view={view()} session={own()} />}</Show>
            </>
          )}
        </Show>
      </div>
      <Asked session={session()} />
      <footer class="glance-always">
        <Show when={session()}>{(own) => <Mode feedback={own().feedback} />}</Show>
        <ThisPhone awake={props.awake} aloud={aloud.state()} />
        <AloudButton aloud={aloud} />
        <p class="glance-caution">{speech().words.glance.caution}</p>
      </footer>
    </main>
  );
}

/** Nothing may be shown, or nothing has come yet. */
function NoView(props: { readonly standing: Standing }) {
  const words = useWords();
  return (
    <Show when={props.standing.kind === 'refused'}>
      <Show when={isEnded(props.standing)} fallback={<Said lead={words().glance.notShown}>{words().glance.notShownWhy}</Said>}><Said lead={words().glance.over} /></Show>
    </Show>
  );
}

const isEnded = (standing: Standing): boolean => standing.kind === 'refused' && isRightEnded(standing);

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
      <Match when={is('ready')}>{(now) => <Said lead={now().first ? words().plane.noThrow : say().ready} />}</Match>
      <Match when={is('quiet-good')}><Said lead={say().quietGood}>{say().quietGoodWhy}</Said></Match>
      <Match when={is('waits')}>{(now) => <Said lead={say().waits(now().more)}>{say().waitsWhy}</Said>}</Match>
      <Match when={is('no-feedback')}><Said lead={say().without}>{say().withoutWhy}</Said></Match>
    </Switch>
  );
}

/** Words instead of numbers. */
function Said(props: { readonly lead: string; readonly children?: JSX.Element }) {
  return (
    <div class="glance-still">
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
  return <Said lead={words().standing.waitingSession} />;
}

function Unclaimed(props: { readonly count: number }) {
  const words = useWords();
  return (
    <Show when={props.count > 0}>
      <p class="glance-unclaimed" data-unclaimed={props.count}><strong>{words().trade.unclaimed(props.count)}</strong> {words().glance.unclaimedWhy}</p>
    </Show>
  );
}

/** The mode that the coach chose; why, and where that comes from, for who wants to know. */
function Mode(props: { readonly feedback: FeedbackView }) {
  const words = useWords();
  return (
    <details class="glance-mode">
      <summary>{modeLine(props.feedback, words())}</summary>{' '}
      <p>{basisWords(props.feedback, words())}</p>
    </details>
  );
}
