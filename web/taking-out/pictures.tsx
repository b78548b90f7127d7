import { createSignal, For, onMount, Show } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import type { Standing } from '../standing/standing.ts';
import { useSpeech } from '../words/use-words.tsx';
import { captionOf } from './caption.ts';
import { savePng, saveSvg } from './save-picture.ts';
import { selfContained } from './self-contained.ts';

/** Whose pictures these are, and where they are drawn. */
export interface PicturesOf {
  readonly view: MoundView;
  readonly standing: Standing;
  readonly session: string;
  readonly picturesIn: () => Element | null;
}

/** The pictures that are drawn when this is opened, each to be saved as it is then. */
export function Pictures(props: PicturesOf) {
  const speech = useSpeech();
  const say = () => speech().words.takingOut;
  const [pictures, setPictures] = createSignal<readonly SVGSVGElement[]>([]);
  const [failed, setFailed] = createSignal(false);
  onMount(() => void setPictures([...props.picturesIn()?.querySelectorAll<SVGSVGElement>('.drawn > svg[aria-label]') ?? []]));
  const nameOf = (picture: SVGSVGElement) => picture.getAttribute('aria-label') ?? '';
  const save = async (picture: SVGSVGElement, as: 'svg' | 'png'): Promise<void> => {
    const file = selfContained(picture, captionOf(props.view, props.standing, speech()));
    const name = `offpace-${props.session}-${props.view.throws.at(-1)?.number ?? 0}`;
    if (as === 'svg') saveSvg(file, name);
    else setFailed(!(await savePng(file, name)));
  };
  return (
    <Show when={pictures().length > 0}>
      <div class="pictures" role="group" aria-label={say().pictures}>
        <p>{say().pictures}</p>
        <For each={pictures()}>{(picture) => (
          <div>
            <span>{nameOf(picture)}</span>
            <For each={['svg', 'png'] as const}>{(as) => <button type="button" aria-label={say().save(nameOf(picture), as.toUpperCase())} onClick={() => void save(picture, as)}>{as.toUpperCase()}</button>}</For>
          </div>
        )}</For>
        <Show when={failed()}><p class="refusal" role="alert">{say().notDrawn}</p></Show>
      </div>
    </Show>
  );
}
