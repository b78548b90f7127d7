import { Show } from 'solid-js';
import type { SessionView } from '../../../core/facts/views.ts';
import { useWords } from '../../words/use-words.tsx';
import type { OneTap } from './one-tap.ts';

/** The next block of two trials that take turns: one tap goes over to it. While it lasts, how many are left of it. */
export function NextBlockOffer(props: { readonly session: SessionView; readonly oneTap: OneTap }) {
  const words = useWords();
  const say = () => words().bench.arm;
  return (
    <Show when={props.oneTap.block()}>
      {(block) => (
        <Show when={block().trial !== props.session.trial?.letter} fallback={<p class="next-block" data-trial={block().trial}>{say().blockNow(block().trial, block().throws)}</p>}>
          <button type="button" class="next-block main" data-trial={block().trial} onClick={() => props.oneTap.goToBlock()}>{say().block(block().trial, block().throws)}</button>
        </Show>
      )}
    </Show>
  );
}
