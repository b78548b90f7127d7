import '../words/of-desk.ts';
import { createEffect, Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { CoachScreen } from '../desk/coach-screen.tsx';
import { reloadOnNewBuild } from '../live/use-build.ts';
import { useMound, type LiveMound } from '../live/use-mound.ts';
import { standingOf } from '../standing/standing.ts';
import { useWords } from '../words/use-words.tsx';
import { Head } from './head.tsx';
import { SessionPlan } from './session-plan.tsx';
import './plan.css';

/** Plan of one mound: which family, what target is within reach, which grip to start from, what it would take. */
export default function Plan(props: { readonly mound: string }) {
  const live = useMound(props.mound);
  reloadOnNewBuild(live.build);
  return <CoachScreen mound={props.mound} live={live}>{(view) => <At mound={props.mound} live={live} view={view()} />}</CoachScreen>;
}

function At(props: { readonly mound: string; readonly live: LiveMound; readonly view: MoundView }) {
  const words = useWords();
  createEffect(() => { document.title = words().plan.frame.title(props.mound); });
  const sessionId = () => props.view.session?.id ?? null;
  return (
    <div class="plan" data-place={props.view.place}>
      <Head standing={standingOf(props.view, props.live.link())} />
      <Show when={sessionId()} keyed fallback={<Nobody mound={props.mound} />}>
        {(id) => <Show when={props.view.session?.id === id && props.view.session}>{(session) => <SessionPlan view={props.view} session={session()} />}</Show>}
      </Show>
      <aside class="plan-care" aria-label={words().bench.session.care}><p>{words().bench.session.careText}</p></aside>
    </div>
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
