import '../words/of-door.ts';
import { createResource, createSignal, For, Match, Show, Switch } from 'solid-js';
import { dateText } from '../words/moments.ts';
import { useSpeech, useWords } from '../words/use-words.tsx';
import { askForGrants, endGrant, letIn, type Answered, type Grant, type LetIn } from './ask-in.ts';
import './door.css';

/** Who was let in, the way to end that, and to let in what has no coach beside it: a device, or a screen on the wall. */
export default function WhoIsIn() {
  const words = useWords();
  const [grants, { refetch }] = createResource(askForGrants);
  const [made, setMade] = createSignal<Answered<LetIn> | null>(null);
  const make = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const kind = (event.submitter as HTMLButtonElement).value as 'device' | 'viewer';
    setMade(await letIn(kind, String(form.get('mound')).trim()));
    await refetch();
  };
  const end = async (id: string): Promise<void> => {
    await endGrant(id);
    await refetch();
  };
  document.title = `Offpace · ${words().door.whoIsIn}`;
  return (
    <main class="door">
      <p><a href="/">Offpace</a></p>
      <h1>{words().door.whoIsIn}</h1>
      <Switch fallback={<p role="status">{words().door.opening}</p>}>
        <Match when={grants()?.kind === 'silent' || grants()?.kind === 'no'}><p role="alert">{words().door.unreachable}</p></Match>
        <Match when={listedIn(grants())}>{(listed) => <ul class="door-grants"><For each={listed()} fallback={<li class="quiet">{words().door.nobodyIsIn}</li>}>{(grant) => <InRow grant={grant} onEnd={() => void end(grant.id)} />}</For></ul>}</Match>
      </Switch>
      <form onSubmit={(event) => void make(event)}>
        <label>{words().door.mound} <input name="mound" required pattern="[A-Za-z0-9][A-Za-z0-9._\-]{0,63}" autocomplete="off" placeholder="north-1" /></label>
        <div class="door-ways">
          <button type="submit" value="device">{words().door.makeToken}</button>
          <button type="submit" value="viewer">{words().door.makeLink}</button>
        </div>
      </form>
      <div role="status">
        <Show when={made()}>{(answer) => <Made answer={answer()} />}</Show>
      </div>
    </main>
  );
}

function listedIn(answer: Answered<readonly Grant[]> | undefined): readonly Grant[] | null {
  return answer?.kind === 'yes' ? answer.value : null;
}

function InRow(props: { readonly grant: Grant; readonly onEnd: () => void }) {
  const speech = useSpeech();
  const say = () => speech().words.door;
  const { to, madeAtMs } = props.grant;
  const who = () => say().in[to.kind](to.kind === 'coach' ? to.name : to.mound);
  return (
    <li>
      <span>{who()} <span class="quiet">{dateText(madeAtMs, null, speech().language)}</span></span>
      <button type="button" aria-label={`${say().end}: ${who()}`} onClick={() => props.onEnd()}>{say().end}</button>
    </li>
  );
}

/** Shown this once: the server keeps only its hash. */
function Made(props: { readonly answer: Answered<LetIn> }) {
  const words = useWords();
  const secret = () => (props.answer.kind === 'yes' ? (props.answer.value.url ?? props.answer.value.token) : null);
  return <Show when={secret()} fallback={<p>{words().door.unreachable}</p>}>{(text) => <><p>{words().door.shownOnce}</p><p class="door-secret">{text()}</p></>}</Show>;
}
