import { createUniqueId, For, Show } from 'solid-js';

/** One of a few words. Native radio buttons, so arrow keys and readers work; the chosen word is underlined and marked. */
export function Choice<T extends string>(props: {
  readonly legend: string;
  readonly options: readonly T[];
  readonly say: (option: T) => string;
  readonly chosen: T | null;
  readonly wrong?: string | null;
  readonly onChoose: (option: T) => void;
}) {
  const group = createUniqueId();
  return (
    <fieldset class="choice">
      <legend>{props.legend}</legend>
      <div class="choice-words">
        <For each={props.options}>
          {(option) => (
            <label>
              <input type="radio" name={group} value={option} checked={props.chosen === option} onChange={() => props.onChoose(option)} />
              <span>{props.say(option)}</span>
            </label>
          )}
        </For>
      </div>
      <Show when={props.wrong}>{(sentence) => <small class="wrong" role="alert">{sentence()}</small>}</Show>
    </fieldset>
  );
}
