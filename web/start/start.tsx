import '../words/of-start.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { SignOut } from '../door/sign-out.tsx';
import { Athletes } from './athletes.tsx';
import { Mounds } from './mounds.tsx';
import { ViewerChoices } from './viewer-choices.tsx';
import './start.css';

/** All mounds with their screens, and the way to the recordings. */
export default function Start() {
  return <Speaking athlete={null}><Ways /></Speaking>;
}

function Ways() {
  const words = useWords();
  document.title = 'Offpace';
  return (
    <main class="start">
      <header>
        <p class="start-name">Offpace</p>
        <h1>{words().start.job}</h1>
      </header>
      <Mounds />
      <Athletes />
      <OtherMound />
      <p class="start-recorded"><a href="/playback">{words().start.recorded}</a> · <a href="/import">{words().start.bringIn}</a> · <a href="/let-in">{words().start.whoIsIn}</a></p>
      <SignOut />
      <ViewerChoices />
    </main>
  );
}

/** A mound that has not been heard of yet can be opened by its name. */
function OtherMound() {
  const words = useWords();
  const go = (event: SubmitEvent): void => {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget as HTMLFormElement).get('mound') ?? '').trim();
    if (name !== '') location.assign(`/bench/${encodeURIComponent(name)}`);
  };
  return (
    <form class="start-other" onSubmit={go}>
      <label>{words().start.other} <input name="mound" required pattern="[A-Za-z0-9][A-Za-z0-9._\-]{0,63}" autocomplete="off" placeholder="north-1" /></label>
      <button type="submit">{words().start.open}</button>
    </form>
  );
}
