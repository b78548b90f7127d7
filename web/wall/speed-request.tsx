import { Show } from 'solid-js';
import type { SessionView } from '../../core/facts/views.ts';
import { createAskedFor, type AskedFor } from '../asked-for.ts';
import { mayBeUnder18, speedAskedFor } from '../shown-speed.ts';
import { useWords } from '../words/use-words.tsx';

/** Whether somebody asked for the speed of an athlete who may be under 18; by the key V. */
export function createSpeedRequest(): AskedFor {
  return createAskedFor('speed', 'shown', 'v', speedAskedFor(location.search));
}

/** There for a keyboard or a reader, and only where speed is hidden by default; unseen until it has the focus. */
export function SpeedButton(props: { readonly session: SessionView | null; readonly request: AskedFor }) {
  const words = useWords();
  return (
    <Show when={props.session !== null && mayBeUnder18(props.session)}>
      <button type="button" class="wall-request" aria-pressed={props.request.asked()} onClick={() => props.request.toggle()}>{props.request.asked() ? words().arm.hideSpeed : words().arm.showSpeed}</button>
    </Show>
  );
}
