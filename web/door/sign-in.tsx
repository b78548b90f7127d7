import '../words/of-door.ts';
import { createSignal, onMount, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { askWhoIAm, signIn, type Answered, type Me } from './ask-in.ts';
import { leadsOn, wantedIn } from './way-on.ts';
import './door.css';

/** Where coaches say who they are, and the way on for who is known already. */
export default function SignIn() {
  const words = useWords();
  const wanted = wantedIn(location.search, location.origin);
  const [answer, setAnswer] = createSignal<Answered<Me> | null>(null);
  const [asking, setAsking] = createSignal(false);
  const goOn = (me: Answered<Me>): boolean => {
    const leads = me.kind === 'yes' && leadsOn(me.value, wanted);
    if (leads) location.replace(wanted);
    return leads;
  };
  onMount(() => void askWhoIAm().then(goOn));
  const submit = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    setAsking(true);
    const said = await signIn(String(form.get('name')), String(form.get('passphrase')));
    setAsking(goOn(said));
    setAnswer(said);
  };
  document.title = `Offpace · ${words().door.signIn}`;
  return (
    <main class="door">
      <p class="start-name">Offpace</p>
      <h1>{words().door.signIn}</h1>
      <p class="quiet">{words().door.forCoaches}</p>
      <form onSubmit={(event) => void submit(event)}>
        <label>{words().door.name} <input name="name" required maxLength={40} autocomplete="name" aria-describedby="name-why" /></label>
        <p id="name-why" class="quiet">{words().door.nameWhy}</p>
        <label>{words().door.passphrase} <input name="passphrase" type="password" required maxLength={128} autocomplete="current-password" /></label>
        <Show when={!isSecureContext}><p class="door-caution">{words().door.unencrypted}</p></Show>
        <p role="alert">{wrongIn(answer(), words().door)}</p>
        <button type="submit" class="chosen" disabled={asking()}>{words().door.signIn}</button>
      </form>
    </main>
  );
}

function wrongIn(answer: Answered<Me> | null, say: ReturnType<ReturnType<typeof useWords>>['door']): string {
  if (answer === null || answer.kind === 'yes') return '';
  if (answer.kind === 'silent') return say.unreachable;
  switch (answer.code) {
    case 'too-many-attempts': return say.tooMany(answer.waitS);
    case 'wrong-passphrase': return say.wrong;
    default: return say.malformed;
  }
}
