import { createSignal, Show, type Accessor } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { withSetting } from '../settings.ts';
import { mayBeUnder18, speedAskedFor } from '../shown-speed.ts';
import { useWords } from '../words/use-words.tsx';

/** Whether somebody asked for the speed of an athlete who may be under 18; remembered in the address. */
export interface SpeedRequest {
  readonly asked: Accessor<boolean>;
  readonly toggle: () => void;
  /** Takes V; tells whether the key was it. */
  readonly takeKey: (key: string) => boolean;
}

export function createSpeedRequest(): SpeedRequest {
  const [asked, setAsked] = createSignal(speedAskedFor(location.search));
  const toggle = (): void => {
    setAsked(!asked());
    history.replaceState(null, '', `${location.pathname}${withSetting(location.search, 'speed', asked() ? 'shown' : null)}`);
  };
  return {
    asked,
    toggle,
    takeKey: (key) => {
      if (key.toLowerCase() !== 'v') return false;
      toggle();
      return true;
    },
  };
}

/** There for a keyboard or a reader, and only where speed is hidden by default; unseen until it has the focus. */
export function SpeedButton(props: { readonly session: SessionView | null; readonly request: SpeedRequest }) {
  const words = useWords();
  return (
    <Show when={props.session !== null && mayBeUnder18(props.session)}>
      <button type="button" class="wall-request" aria-pressed={props.request.asked()} onClick={() => props.request.toggle()}>{props.request.asked() ? words().arm.hideSpeed : words().arm.showSpeed}</button>
    </Show>
  );
}
