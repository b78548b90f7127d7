import { createUniqueId, Show } from 'solid-js';

/** A line of words. */
export function TextField(props: {
  readonly label: string;
  readonly text: string;
  readonly longest: number;
  readonly wrong?: string | null;
  readonly onText: (text: string) => void;
}) {
  const id = createUniqueId();
  const wrong = () => props.wrong ?? null;
  return (
    <div class="field wide">
      <label for={id}>{props.label}</label>
      <input id={id} type="text" autocomplete="off" maxLength={props.longest} value={props.text} aria-invalid={wrong() !== null} aria-describedby={wrong() === null ? undefined : `${id}-wrong`}
        onInput={(event) => props.onText(event.currentTarget.value)} />
      <Show when={wrong()}>{(sentence) => <small id={`${id}-wrong`} class="wrong">{sentence()}</small>}</Show>
    </div>
  );
}
