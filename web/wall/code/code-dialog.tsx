import { createEffect, createResource, createSignal, Match, onCleanup, onMount, Show, Switch } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { hourText } from '../../words/moments.ts';
import { useSpeech } from '../../words/use-words.tsx';
import { askForCode, stateOf, type Asked, type CodeState, type GlanceCode } from './ask-code.ts';
import { QrPicture } from './qr-picture.tsx';
import './code.css';

const LOOK_EVERY_MS = 1000;
/** Long enough to be read from the mound, then the Wall is the session's again. */
const USED_SAID_MS = 4000;

/** A fresh code, large enough for a phone two metres away, until it is used, over, or put away. */
export default function CodeDialog(props: { readonly session: SessionView; readonly onClose: () => void }) {
  const speech = useSpeech();
  const say = () => speech().words.glanceCode;
  const [asked, { refetch }] = createResource(() => askForCode(props.session.id));
  const code = () => codeIn(asked());
  const state = useCodeState(() => code()?.id ?? null);
  createEffect(() => {
    if (state() !== 'used') return;
    const away = setTimeout(() => props.onClose(), USED_SAID_MS);
    onCleanup(() => clearTimeout(away));
  });
  let dialog!: HTMLDialogElement;
  onMount(() => dialog.showModal());
  return (
    <dialog ref={dialog} class="code-dialog" aria-labelledby="code-title" data-code={state() ?? 'none'} onClose={() => props.onClose()}>
      <h2 id="code-title">{say().title(props.session.athlete.name)}</h2>
      <div class="code-body" aria-live="polite">
        <Switch fallback={<p>{refusedWords(asked(), say())}</p>}>
          <Match when={asked.loading}><p>{say().asking}</p></Match>
          <Match when={state() === 'used'}><p class="code-said">{say().used}</p></Match>
          <Match when={state() === 'over'}><p class="code-said">{say().over}</p></Match>
          <Match when={code()}>
            {(open) => (
              <>
                <QrPicture text={open().url} said={say().drawn(props.session.athlete.name)} />
                <div class="code-words">
                  <p class="code-said">{say().how}</p>
                  <p>{say().good(hourText(open().expiresAtMs, props.session.timeZone, speech().language))}</p>
                  <Show when={open().reach === 'this-machine'}><p class="code-caution">{say().thisMachine}</p></Show>
                </div>
              </>
            )}
          </Match>
        </Switch>
      </div>
      <p class="code-buttons">
        <Show when={!asked.loading && (code() === null || state() === 'over')}><button type="button" onClick={() => void refetch()}>{say().again}</button></Show>
        <button type="button" onClick={() => dialog.close()}>{say().close}</button>
      </p>
    </dialog>
  );
}

/** Asks what became of a code for as long as it may still be used. */
function useCodeState(id: () => string | null): () => CodeState | null {
  const [state, setState] = createSignal<CodeState | null>(null);
  createEffect(() => {
    const asked = id();
    setState(asked === null ? null : 'open');
    if (asked === null) return;
    const looking = setInterval(() => void stateOf(asked).then((now) => {
      if (now === null || id() !== asked) return;
      setState(now);
      if (now !== 'open') clearInterval(looking);
    }), LOOK_EVERY_MS);
    onCleanup(() => clearInterval(looking));
  });
  return state;
}

function codeIn(asked: Asked<GlanceCode> | undefined): GlanceCode | null {
  return asked?.kind === 'answer' ? asked.value : null;
}

function refusedWords(asked: Asked<GlanceCode> | undefined, say: { readonly closed: string; readonly notYours: string; readonly silent: string }): string {
  if (asked?.kind !== 'refused') return say.silent;
  return asked.code === 'session-closed' ? say.closed : say.notYours;
}
