import { createMemo, For } from 'solid-js';
import { FIELDS, FORMS } from '../../core/imports/fields.ts';
import { guessColumns, guessDecimal } from '../../core/imports/guess.ts';
import { NAMED } from '../../core/imports/header-words.ts';
import { save } from '../taking-out/save.ts';
import { useSpeech } from '../words/use-words.tsx';
import { unitText } from './because-words.ts';
import { exampleCsv, exampleRows } from './example.ts';

/** Before any file is chosen: what one looks like, one to try it with, and the words that are known in the head of a column. */
export function FirstStep() {
  const speech = useSpeech();
  const say = () => speech().words.imports;
  const example = createMemo(() => {
    const { heads, rows } = exampleRows(speech().language);
    return guessColumns(heads, rows, guessDecimal(rows)).map(({ column: { header, field } }, index) => ({ header, value: rows[0]![index]!, field: field! }));
  });
  return (
    <section class="import-about import-first" aria-labelledby="import-first">
      <h2 id="import-first">{say().looks.title}</h2>
      <p>{say().looks.rows}</p>
      <table>
        <thead><tr><th scope="col">{say().head}</th><th scope="col">{say().looks.firstRow}</th><th scope="col">{say().is}</th></tr></thead>
        <tbody><For each={example()}>{({ header, value, field }) => <tr><th scope="row">{header}</th><td>{value}</td><td>{say().fields[field]}</td></tr>}</For></tbody>
      </table>
      <p class="quiet">{say().looks.more}</p>
      <div class="import-ways">
        <button type="button" onClick={() => save(new Blob(['\ufeff', exampleCsv(speech().language)], { type: 'text/csv' }), say().looks.fileName)}>{say().looks.take}</button>
        <p class="quiet">{say().looks.takeWhy}</p>
      </div>
      <details class="opens">
        <summary>{say().looks.words}</summary>
        <p class="quiet">{say().looks.wordsWhy}</p>
        <table class="import-known">
          <thead><tr><th scope="col">{say().is}</th><th scope="col">{say().looks.known}</th><th scope="col">{say().unit}</th></tr></thead>
          <tbody>
            <For each={FIELDS}>
              {(field) => <tr><th scope="row">{say().fields[field]}</th><td>{NAMED[field].join(', ')}</td><td>{FORMS[field].units.map(({ unit }) => unitText(unit, say())).join('; ')}</td></tr>}
            </For>
          </tbody>
        </table>
      </details>
    </section>
  );
}
