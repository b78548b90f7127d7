import '../words/of-door.ts';
import { createResource, createSignal, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { askWhoIAm, signedInAs, signOut } from './ask-in.ts';
import './door.css';

/** Who is signed in on this screen, and the way out: for a tablet that passes from hand to hand. Nothing where nobody signs in. */
export function SignOut() {
  const words = useWords();
  const [me] = createResource(askWhoIAm);
  const [failed, setFailed] = createSignal(false);
  const leave = async (): Promise<void> => {
    setFailed(false);
    if (await signOut()) location.replace('/sign-in');
    else setFailed(true);
  };
  return (
    <Show when={signedInAs(me())}>
      {(name) => (
        <p class="sign-out">
          {words().door.signedInAs(name())} <button type="button" onClick={() => void leave()}>{words().door.signOut}</button>
          <Show when={failed()}> <span role="alert">{words().door.unreachable}</span></Show>
        </p>
      )}
    </Show>
  );
}
