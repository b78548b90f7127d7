import { For, Show } from 'solid-js';
import type { SessionView, ThrowView } from '../../../../core/facts/views.ts';
import { Answer } from '../../../desk/answer.tsx';
import { useDesk } from '../../../desk/desk.ts';
import { useWords } from '../../../words/use-words.tsx';
import { REASONS } from '../../throws/exclude-panel.tsx';
import { TagPanel } from '../../throws/tag-panel.tsx';
import type { OpenSheet } from '../open-sheet.ts';
import { HeldThrow } from './held-throw.tsx';

/** Puts the last throw right: one tap leaves it out with a reason or takes it back in, one tap says what it was meant as. */
export function ThrowSheet(props: { readonly session: SessionView; readonly open: OpenSheet }) {
  const words = useWords();
  return (
    <Show when={props.open.held()} fallback={<p>{words().bench.dock.noThrow}</p>}>
      {(thrown) => <>
        <HeldThrow thrown={thrown()} open={props.open} />
        <Answer corner="throws" />
        <Exclusion session={props.session} thrown={thrown()} />
        <Tags session={props.session} thrown={thrown()} />
      </>}
    </Show>
  );
}

function Exclusion(props: { readonly session: SessionView; readonly thrown: ThrowView }) {
  const desk = useDesk();
  const words = useWords();
  const say = () => words().bench.throws;
  const about = () => ({ session: props.session.id, places: [props.thrown.place] });
  return (
    <div class="row" role="group" aria-label={say().exclude}>
      <Show when={props.thrown.excluded} fallback={<>
        <span class="quiet">{say().exclude}:</span>
        <For each={REASONS}>{(reason) => <button type="button" onClick={() => void desk.say('throws', { kind: 'throws-excluded', ...about(), reason: say().reasons[reason] })}>{say().reasons[reason]}</button>}</For>
      </>}>
        {(reason) => <>
          <span>{say().excludedBecause(reason())}</span>
          <button type="button" onClick={() => void desk.say('throws', { kind: 'throws-restored', ...about() })}>{say().restore}</button>
        </>}
      </Show>
    </div>
  );
}

function Tags(props: { readonly session: SessionView; readonly thrown: ThrowView }) {
  const desk = useDesk();
  const places = () => [props.thrown.place];
  return <TagPanel session={props.session} selection={{ places }} onSay={async (says) => { await desk.say('throws', says); }} />;
}
