import { createSignal, Show } from 'solid-js';
import { withSetting } from '../settings.ts';
import { useWords } from '../words/use-words.tsx';
import type { RecordingModel } from './recording-model.ts';

/** The address that opens this session at the throw that is shown, paused. */
export interface ThrowLink {
  readonly copy: () => void;
  readonly state: () => 'copied' | 'by-hand' | null;
  readonly address: () => string;
}

export function createThrowLink(model: RecordingModel): ThrowLink {
  const [copiedAt, setCopied] = createSignal<{ readonly place: number; readonly by: 'copied' | 'by-hand' } | null>(null);
  const place = () => model.thrown()?.place ?? model.view().place;
  const address = () => `${location.origin}/playback/${encodeURIComponent(model.recorded.session)}${withSetting(location.search, 'throw', String(place()))}`;
  return {
    address,
    // What was copied is said until another throw is shown.
    state: () => (copiedAt()?.place === place() ? copiedAt()!.by : null),
    copy: () => {
      const of = place();
      // On a plain address other than this machine's own a browser has no clipboard to give.
      void Promise.resolve(navigator.clipboard?.writeText(address()) ?? Promise.reject(new Error('no clipboard')))
        .then(() => setCopied({ place: of, by: 'copied' }), () => setCopied({ place: of, by: 'by-hand' }));
    },
  };
}

export function LinkButton(props: { readonly link: ThrowLink }) {
  const words = useWords();
  return (
    <div class="throw-link">
      <button type="button" onClick={() => props.link.copy()}>{words().playback.copyLink}</button>
      <span aria-live="polite">{props.link.state() === 'copied' ? words().playback.copied : ''}</span>
      <Show when={props.link.state() === 'by-hand'}>
        <label>{words().playback.copyByHand}<input type="text" readOnly value={props.link.address()} ref={(input) => queueMicrotask(() => input.select())} /></label>
      </Show>
    </div>
  );
}
