import { useDesk } from '../desk/desk.ts';
import { ScreenLinks } from '../desk/screen-links.tsx';
import { StandingWord } from '../standing/frame.tsx';
import type { Standing } from '../standing/standing.ts';
import { useWords } from '../words/use-words.tsx';

/** Whose plan it is, and whether what it rests on is now. */
export function Head(props: { readonly standing: Standing }) {
  const desk = useDesk();
  const words = useWords();
  return (
    <header class="plan-head">
      <h1>{desk.session()?.athlete.name ?? words().bench.frame.nobody}</h1>
      <p class="quiet">{words().plan.frame.onPlan}, {words().bench.frame.mound(desk.mound)}</p>
      <StandingWord standing={props.standing} timeZone={desk.session()?.timeZone ?? null} />
      <nav aria-label={words().bench.frame.otherScreens}>
        <ScreenLinks screens={['bench', 'wall']} />
      </nav>
    </header>
  );
}
