import { createEffect, Show } from 'solid-js';
import type { Athlete } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import { DeskProvider, type Desk } from '../desk/desk.ts';
import { createSaying } from '../desk/saying.ts';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound, type LiveMound } from '../live/use-mound.ts';
import { StandingFrame } from '../standing/frame.tsx';
import { standingOf, standingWords } from '../standing/standing.ts';
import { chooseLanguage } from '../words/language.ts';
import { Speaking, useSpeech, useWords } from '../words/use-words.tsx';
import { Head } from './head.tsx';
import { SessionPlan } from './session-plan.tsx';
import './plan.css';

/** Plan of one mound: which family, what target is within reach, which grip to start from, what it would take. */
export default function Plan(props: { readonly mound: string }) {
  const live = useMound(props.mound);
  reloadOnNewBuild(live.build);
  return (
    <Speaking athlete={inCoachsLanguage(live.view()?.session?.athlete ?? null)}>
      <StandingFrame standing={standingOf(live.view(), live.link())}>
        <Show when={live.view()} fallback={<Arriving live={live} />}>{(view) => <At mound={props.mound} live={live} view={view()} />}</Show>
      </StandingFrame>
    </Speaking>
  );
}

/** Like Bench, Plan speaks the language of who holds it, in the units of who throws. */
function inCoachsLanguage(athlete: Athlete | null): Athlete | null {
  return athlete === null ? null : { ...athlete, language: chooseLanguage(null, null, navigator.languages) };
}

/** Before the first view has come. */
function Arriving(props: { readonly live: LiveMound }) {
  const speech = useSpeech();
  return <main class="plan-arriving"><p role="status">{standingWords(standingOf(null, props.live.link()), null, speech())}</p></main>;
}

function At(props: { readonly mound: string; readonly live: LiveMound; readonly view: MoundView }) {
  const words = useWords();
  const desk: Desk = { mound: props.mound, view: () => props.view, session: () => props.view.session, ...createSaying(props.live.say) };
  createEffect(() => { document.title = words().plan.frame.title(props.mound); });
  const sessionId = () => props.view.session?.id ?? null;
  return (
    <DeskProvider value={desk}>
      <div class="plan" data-place={props.view.place}>
        <Head standing={standingOf(props.view, props.live.link())} />
        <Show when={sessionId()} keyed fallback={<Nobody mound={props.mound} />}>
          {(id) => <Show when={props.view.session?.id === id && props.view.session}>{(session) => <SessionPlan view={props.view} session={session()} />}</Show>}
        </Show>
        <aside class="plan-care" aria-label={words().bench.session.care}><p>{words().bench.session.careText}</p></aside>
      </div>
    </DeskProvider>
  );
}

function Nobody(props: { readonly mound: string }) {
  const words = useWords();
  return (
    <main class="first-fastballs">
      <h2>{words().plan.frame.planNeeds}</h2>
      <p><a href={`/bench/${encodeURIComponent(props.mound)}`}>{words().plan.frame.openOnBench}</a></p>
    </main>
  );
}
