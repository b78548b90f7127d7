import { createUniqueId, Show } from 'solid-js';

/** A number with its unit. What was typed is kept as text until it is used, so nothing is rewritten under the fingers. */
export function NumberField(props: {
  readonly label: string;
  readonly hint?: string;
  readonly unit: string;
  readonly step: number;
  readonly text: string;
  readonly wrong?: string | null;
  readonly onText: (text: string) => void;
  readonly onDone?: () => void;
}) {
  const id = createUniqueId();
  const wrong = () => props.wrong ?? null;
  const about = () => (wrong() === null && props.hint === undefined ? undefined : `${id}-about`);
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <span class="field-value">
        <input id={id} type="number" inputmode="decimal" step={props.step} value={props.text} aria-invalid={wrong() !== null} aria-describedby={about()}
          onInput={(event) => props.onText(event.currentTarget.value)} onChange={() => props.onDone?.()} />
        <Show when={props.unit !== ''}><span class="unit">{props.unit}</span></Show>
      </span>
      <Show when={about()}>{(about) => <small id={about()} classList={{ wrong: wrong() !== null }}>{wrong() ?? props.hint}</small>}</Show>
    </div>
  );
}
