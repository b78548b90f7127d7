import { Show, type Accessor, type JSX } from 'solid-js';
import type { Athlete } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { LiveMound } from '../live/use-mound.ts';
import { StandingFrame } from '../standing/frame.tsx';
import { standingOf, standingWords } from '../standing/standing.ts';
import { chooseLanguage } from '../words/language.ts';
import { Speaking, useSpeech } from '../words/use-words.tsx';
import { createDesk } from './at-desk.ts';
import { DeskProvider } from './desk.ts';
import './coach-screen.css';

interface CoachScreenProps {
  readonly mound: string;
  readonly live: LiveMound;
  readonly children: (view: Accessor<MoundView>) => JSX.Element;
}

/** A coach's screen of one mound: its frame, its language, and the desk at which its parts say things. */
export function CoachScreen(props: CoachScreenProps) {
  return (
    <Speaking athlete={inCoachsLanguage(props.live.view()?.session?.athlete ?? null)}>
      <StandingFrame standing={standingOf(props.live.view(), props.live.link())}>
        <Show when={props.live.view()} fallback={<Arriving mound={props.mound} live={props.live} />}>{(view) => <AtDesk {...props} view={view()} />}</Show>
      </StandingFrame>
    </Speaking>
  );
}

/** It speaks the language of who holds it, in the units of who throws: two athletes who alternate do not change the coach's language. */
function inCoachsLanguage(athlete: Athlete | null): Athlete | null {
  return athlete === null ? null : { ...athlete, language: chooseLanguage(null, null, navigator.languages) };
}

/** Before the first view has come. */
function Arriving(props: { readonly mound: string; readonly live: LiveMound }) {
  const speech = useSpeech();
  return <main class="arriving"><h1>{props.mound}</h1><p role="status">{standingWords(standingOf(null, props.live.link()), null, speech())}</p></main>;
}

function AtDesk(props: CoachScreenProps & { readonly view: MoundView }) {
  const desk = createDesk(props.mound, () => props.view, props.live);
  return <DeskProvider value={desk}>{props.children(desk.view)}</DeskProvider>;
}
