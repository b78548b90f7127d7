import { createMemo, Show, type Accessor, type JSX } from 'solid-js';
import type { Athlete } from '../../core/facts/coach.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { LiveMound } from '../live/use-mound.ts';
import { StandingFrame } from '../standing/frame.tsx';
import { RefusalWords } from '../standing/refusal.tsx';
import { standingOf, standingWords } from '../standing/standing.ts';
import { StillConnecting } from '../standing/still-connecting.tsx';
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

/** Before the first view has come, or where none comes: why, and the way on. */
function Arriving(props: { readonly mound: string; readonly live: LiveMound }) {
  const speech = useSpeech();
  const standing = createMemo(() => standingOf(null, props.live.link()));
  const refused = () => {
    const now = standing();
    return now.kind === 'refused' ? now : null;
  };
  return (
    <main class="arriving">
      <h1>{props.mound}</h1>
      <div role="status">
        <p>{standingWords(standing(), null, speech())}</p>
        <Show when={refused()}>{(refusal) => <p><RefusalWords refusal={refusal()} /></p>}</Show>
        <Show when={standing().kind === 'connecting'}><StillConnecting /></Show>
      </div>
      <p><a href="/">{speech().words.start.home}</a></p>
    </main>
  );
}

function AtDesk(props: CoachScreenProps & { readonly view: MoundView }) {
  const desk = createDesk(props.mound, () => props.view, props.live);
  return <DeskProvider value={desk}>{props.children(desk.view)}</DeskProvider>;
}
