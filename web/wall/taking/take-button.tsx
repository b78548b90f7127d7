import { createSignal, lazy, onCleanup, onMount, Show, Suspense } from 'solid-js';
import type { MoundView } from '../../../core/facts/views.ts';
import type { Standing } from '../../standing/standing.ts';
import { useWords } from '../../words/use-words.tsx';

const TakeDialog = lazy(() => import('./take-dialog.tsx'));
const KEY = 't';
/** Long enough to reach the button from wherever the pointer was. */
const POINTED_FOR_MS = 4000;

/** Saves the pictures of the Wall, by the key T. For a pointer the button is there while it moves; for a keyboard or a reader it is unseen until it has the focus. */
export function TakeButton(props: { readonly view: MoundView; readonly standing: Standing }) {
  const words = useWords();
  const [open, setOpen] = createSignal(false);
  const pointed = createPointed();
  const session = () => props.view.session?.id ?? null;
  onMount(() => {
    const listen = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): void => {
      if (key.toLowerCase() === KEY && !ctrlKey && !metaKey && !altKey) setOpen(!open());
    };
    addEventListener('keydown', listen);
    onCleanup(() => removeEventListener('keydown', listen));
  });
  return (
    <Show when={session()}>
      {(id) => (
        <>
          <button type="button" class="wall-request" classList={{ pointed: pointed() }} onClick={() => setOpen(true)}>{words().wall.takePictures}</button>
          <Show when={open()}><Suspense><TakeDialog view={props.view} standing={props.standing} session={id()} onClose={() => setOpen(false)} /></Suspense></Show>
        </>
      )}
    </Show>
  );
}

/** Whether somebody has a mouse in the hand: it was moved a moment ago. */
function createPointed(): () => boolean {
  const [pointed, setPointed] = createSignal(false);
  let still: ReturnType<typeof setTimeout> | undefined;
  const moved = ({ pointerType }: PointerEvent): void => {
    if (pointerType !== 'mouse') return;
    setPointed(true);
    clearTimeout(still);
    still = setTimeout(() => setPointed(false), POINTED_FOR_MS);
  };
  addEventListener('pointermove', moved);
  onCleanup(() => {
    clearTimeout(still);
    removeEventListener('pointermove', moved);
  });
  return pointed;
}
