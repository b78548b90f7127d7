import type { SessionView } from '../../core/facts/views.ts';
import { StandingWord } from '../standing/frame.tsx';
import type { Standing } from '../standing/standing.ts';
import { useWords } from '../words/use-words.tsx';

/** While pain stands the Wall has no number to chase: what to do, readable from where one stands. Whose arm it is, the name says; where it hurts is not for a wall. */
export function PainPicture(props: { readonly session: SessionView; readonly standing: Standing }) {
  const words = useWords();
  return (
    <div class="wall-empty wall-pain">
      <header class="wall-head"><h1>{props.session.athlete.name}</h1><StandingWord standing={props.standing} timeZone={props.session.timeZone} /></header>
      <div class="wall-poster" role="alert">
        <p class="wall-lead">{words().arm.stop}</p>
        <p>{words().arm.stopFar}</p>
        <p class="quiet">{words().arm.stopStays}</p>
      </div>
    </div>
  );
}
