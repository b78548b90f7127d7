import { createSignal, For, Show } from 'solid-js';
import { INTENTS, type Intent } from '../../../core/facts/vocabulary.ts';
import { useWords } from '../../words/use-words.tsx';
import { Choice } from '../fields/choice.tsx';
import type { PanelProps } from './panel.ts';
import type { Selection } from './selection.ts';

const NO_TRIAL = 'none';

/** Says what the chosen throws were meant as: one tap on an intent, or first which trial they belong to. */
export function TagPanel(props: Omit<PanelProps, 'selection'> & { readonly selection: Pick<Selection, 'places'> }) {
  const words = useWords();
  const say = () => words().bench.throws;
  /** Untouched, a throw goes into the current trial when it is of that trial's intent. */
  const [picked, setPicked] = createSignal<string | null>(null);
  const trialFor = (intent: Intent): string | null => {
    const wanted = picked() ?? props.session.trial?.letter ?? NO_TRIAL;
    return props.session.trials.find(({ letter, intent: of }) => letter === wanted && of === intent)?.letter ?? null;
  };
  const tag = (intent: Intent) => void props.onSay({ kind: 'throws-tagged', session: props.session.id, places: props.selection.places(), intent, trial: trialFor(intent) });
  return (
    <div class="panel" role="group" aria-label={say().tagAs}>
      <Show when={props.session.trials.length > 0}>
        <Choice legend={say().inTrial} options={[...props.session.trials.map(({ letter }) => letter), NO_TRIAL]} say={(letter) => (letter === NO_TRIAL ? say().outOfTrials : letter)}
          chosen={picked() ?? props.session.trial?.letter ?? NO_TRIAL} onChoose={setPicked} />
      </Show>
      <div class="words">
        <For each={INTENTS}>
          {(intent) => (
            <button type="button" onClick={() => tag(intent)}>
              {words().trade.intent[intent]} <Show when={trialFor(intent)}>{(letter) => <small>{letter()}</small>}</Show>
            </button>
          )}
        </For>
      </div>
    </div>
  );
}
