import type { JSX } from 'solid-js';
import { isDimmed, standingWords, type Standing } from './standing.ts';
import { useSpeech } from '../words/use-words.tsx';
import './standing.css';

/** The word that says how what is shown relates to now. Announced to those who do not see it change. */
export function StandingWord(props: { readonly standing: Standing; readonly timeZone: string | null; readonly brief?: boolean }) {
  const speech = useSpeech();
  return <p class="standing-word" role="status" data-standing={props.standing.kind}>{standingWords(props.standing, props.timeZone, speech(), props.brief)}</p>;
}

/** The border round a whole screen that goes with that word; dims what may no longer be so. */
export function StandingFrame(props: { readonly standing: Standing; readonly children: JSX.Element }) {
  return <div class="standing-frame" data-standing={props.standing.kind} data-dimmed={isDimmed(props.standing) ? 'yes' : 'no'}>{props.children}</div>;
}
