import { Show } from 'solid-js';
import type { ThrowView } from '../../../../core/facts/views.ts';
import { useWords } from '../../../words/use-words.tsx';
import type { OpenSheet } from '../open-sheet.ts';

/** Which throw a sheet speaks of, in words; and, where another has come since, the way to that one. */
export function HeldThrow(props: { readonly thrown: ThrowView; readonly open: OpenSheet }) {
  const words = useWords();
  const trade = () => words().trade;
  const intent = () => (props.thrown.intent === null ? trade().noIntent : trade().intent[props.thrown.intent]);
  const trial = () => (props.thrown.trial === null ? '' : `, ${words().bench.throws.inTrialShort(props.thrown.trial)}`);
  return (
    <div class="held-throw">
      <p><b>{trade().throwNumber(props.thrown.number)}</b> <span>{intent()}{trial()}</span></p>
      <Show when={props.open.newer()}>
        {(newer) => <button type="button" onClick={() => props.open.holdNewest()}>{words().bench.dock.newer(trade().throwNumber(newer().number))}</button>}
      </Show>
    </div>
  );
}
