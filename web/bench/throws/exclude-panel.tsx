import { createSignal, For } from 'solid-js';
import { useWords } from '../../words/use-words.tsx';
import { TextField } from '../../desk/text-field.tsx';
import type { PanelProps } from './panel.ts';

export const REASONS = ['misread', 'slipped', 'not-a-try'] as const;

/** Leaves throws out of every number, with the reason; they stay in the log and in the list. */
export function ExcludePanel(props: PanelProps) {
  const words = useWords();
  const say = () => words().bench.throws;
  const [own, setOwn] = createSignal('');
  const exclude = (reason: string) => void props.onSay({ kind: 'throws-excluded', session: props.session.id, places: props.selection.places(), reason });
  return (
    <div class="panel" role="group" aria-label={say().excludeWhy}>
      <p class="quiet">{say().excludeWhy}</p>
      <div class="words">
        <For each={REASONS}>{(reason) => <button type="button" onClick={() => exclude(say().reasons[reason])}>{say().reasons[reason]}</button>}</For>
      </div>
      <form class="row" onSubmit={(event) => { event.preventDefault(); exclude(own().trim()); }}>
        <TextField label={say().reasonOwn} text={own()} longest={200} onText={setOwn} />
        <button type="submit" disabled={own().trim() === ''}>{say().exclude}</button>
      </form>
    </div>
  );
}
