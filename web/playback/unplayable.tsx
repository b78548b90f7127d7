import type { Unheard } from '../live/recorded.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { listAddress } from './place-in-address.ts';
import { Unanswered } from './unanswered.tsx';

interface Failed {
  readonly unheard: Unheard;
  readonly again: () => void;
}

/** Why a session cannot be played, and the way back to the list. */
export function Unplayable(props: Failed) {
  return <Speaking athlete={null}><Explained {...props} /></Speaking>;
}

function Explained(props: Failed) {
  const words = useWords();
  return (
    <main class="session-list">
      <p><a href={listAddress()}>{words().playback.toList}</a></p>
      <h1>{words().playback.gone}</h1>
      <Unanswered {...props} />
    </main>
  );
}
