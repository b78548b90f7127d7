import { For, Index, Show } from 'solid-js';
import { FIELDS, FORMS, SIDES, type Field, type Side } from '../../core/imports/fields.ts';
import type { Column, Layout } from '../../core/imports/layout.ts';
import { textOf } from '../../core/imports/read-cell.ts';
import type { FileLook } from '../../core/imports/wire.ts';
import { useSpeech } from '../words/use-words.tsx';
import { becauseText, unitText, type BecauseSaid } from './because-words.ts';

/** Rows of the file that are shown beside what their columns are. */
const ROWS_SHOWN = 3;

/** Every column of the file with its first values, what it was taken for, and what that rests on. */
export function Columns(props: { readonly look: FileLook; readonly layout: Layout; readonly recipe: string | null; readonly onLayout: (layout: Layout) => void }) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const set = (index: number, column: Column): void => props.onLayout({ ...props.layout, columns: props.layout.columns.with(index, column) });
  const why = (index: number): BecauseSaid => {
    const [column, guessed] = [props.layout.columns[index]!, props.look.layout.columns[index]!];
    if (props.recipe !== null) return { said: say().why.recipe(props.recipe), lookTwice: false };
    const isGuess = column.field === guessed.field && column.unit === guessed.unit && column.towards === guessed.towards;
    return isGuess ? becauseText(column, props.look.because[index]!, speech()) : { said: say().why.byHand, lookTwice: false };
  };
  return (
    <section class="import-columns" aria-labelledby="import-columns">
      <h2 id="import-columns">{say().columns}</h2>
      <p class="quiet">{say().columnsWhy(props.look.rows.length)}</p>
      <table>
        <thead><tr><th scope="col">{say().head}</th><th scope="col">{say().first}</th><th scope="col">{say().is}</th><th scope="col">{say().unit}</th><th scope="col">{say().because}</th></tr></thead>
        <tbody>
          <Index each={props.layout.columns}>
            {(column, index) => (
              <tr classList={{ unread: column().field === null }}>
                <th scope="row">{column().header}</th>
                <td class="import-values"><For each={props.look.rows.slice(0, ROWS_SHOWN)}>{(row) => <span>{textOf(row[index]).slice(0, 40) || '·'}</span>}</For></td>
                <td><FieldChoice column={column()} onColumn={(changed) => set(index, changed)} /></td>
                <td><UnitChoice column={column()} onColumn={(changed) => set(index, changed)} /></td>
                <td class="import-why"><Show when={why(index).lookTwice}><strong>{say().why.lookTwice}: </strong></Show>{why(index).said}</td>
              </tr>
            )}
          </Index>
        </tbody>
      </table>
      <label class="import-field">
        {say().decimal}
        <select onChange={(event) => props.onLayout({ ...props.layout, decimal: event.currentTarget.value as Layout['decimal'] })}>
          <For each={['.', ','] as const}>{(sign) => <option value={sign} selected={props.layout.decimal === sign}>{sign === '.' ? say().decimals.point : say().decimals.comma}</option>}</For>
        </select>
      </label>
    </section>
  );
}

interface ChoiceOf {
  readonly column: Column;
  readonly onColumn: (column: Column) => void;
}

function FieldChoice(props: ChoiceOf) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const choose = (value: string): void => {
    const field = value === '' ? null : (value as Field);
    const form = field === null ? null : FORMS[field];
    props.onColumn({ header: props.column.header, field, unit: form?.units[0]?.unit ?? null, towards: form?.sided ? 'right' : null });
  };
  return (
    <select aria-label={say().of(say().is, props.column.header)} onChange={(event) => choose(event.currentTarget.value)}>
      <option value="" selected={props.column.field === null}>{say().notRead}</option>
      <For each={FIELDS}>{(field) => <option value={field} selected={props.column.field === field}>{say().fields[field]}</option>}</For>
    </select>
  );
}

function UnitChoice(props: ChoiceOf) {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const form = () => (props.column.field === null ? null : FORMS[props.column.field]);
  return (
    <>
      <Show when={(form()?.units.length ?? 0) > 0}>
        <select aria-label={say().of(say().unit, props.column.header)} onChange={(event) => props.onColumn({ ...props.column, unit: event.currentTarget.value })}>
          <For each={form()!.units}>{({ unit }) => <option value={unit} selected={props.column.unit === unit}>{unitText(unit, say())}</option>}</For>
        </select>
      </Show>
      <Show when={form()?.sided}>
        <select aria-label={say().of(say().towards, props.column.header)} onChange={(event) => props.onColumn({ ...props.column, towards: event.currentTarget.value as Side })}>
          <For each={SIDES}>{(side) => <option value={side} selected={props.column.towards === side}>{say().sides[side]}</option>}</For>
        </select>
      </Show>
    </>
  );
}
