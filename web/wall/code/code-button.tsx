import '../../words/of-glance-code.ts';
import { createResource, createSignal, lazy, onCleanup, onMount, Show, Suspense } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { askWhoIAm } from '../../door/ask-in.ts';
import { useWords } from '../../words/use-words.tsx';

const CodeDialog = lazy(() => import('./code-dialog.tsx'));
const KEY = 'q';

/** The code for the athlete's phone, by the key Q: there for a coach while a session is open, unseen until somebody asks or tabs to it. Who only looks may not ask for one. */
export function CodeButton(props: { readonly session: SessionView | null }) {
  const words = useWords();
  const [asked, setAsked] = createSignal<string | null>(null);
  const [me] = createResource(askWhoIAm);
  const isCoach = () => {
    const said = me();
    return said?.kind === 'yes' && said.value.kind === 'coach';
  };
  const open = () => (isCoach() && props.session !== null && props.session.closedAtMs === null ? props.session : null);
  const toggle = (): void => void setAsked(asked() === null ? open()?.id ?? null : null);
  onMount(() => {
    const listen = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): void => {
      if (key.toLowerCase() === KEY && !ctrlKey && !metaKey && !altKey) toggle();
    };
    addEventListener('keydown', listen);
    onCleanup(() => removeEventListener('keydown', listen));
  });
  return (
    <Show when={open()}>
      {(session) => (
        <>
          <button type="button" class="wall-request" onClick={toggle}>{words().glanceCode.show}</button>
          <Show when={asked() === session().id}><Suspense><CodeDialog session={session()} onClose={() => setAsked(null)} /></Suspense></Show>
        </>
      )}
    </Show>
  );
}
