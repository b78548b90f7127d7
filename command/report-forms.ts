import type { Sheet, SheetSection } from '../web/report/sheet.ts';

/** A report for a terminal or a letter. */
export function asText({ title, sections, foot }: Sheet): string {
  return [title, ...sections.flatMap((section) => ['', section.title, ...section.lines.map((line) => `  ${line}`), ...tableText(section)]), '', ...foot].join('\n');
}

/** Each row over several lines, so that long grips break nothing. */
function tableText({ table: [header, ...rows] }: SheetSection): string[] {
  return header === undefined ? [] : rows.flatMap(([first, ...cells]) => [`  ${first}`, ...cells.map((cell, column) => `    ${header[column + 1]}: ${cell}`)]);
}

const STYLE = `body{font:16px/1.45 system-ui,sans-serif;max-width:46rem;margin:2rem auto;padding:0 1rem;color:#111;background:#fff}
h1{font-size:1.5rem}h2{font-size:1.1rem;margin:1.5rem 0 .25rem}p{margin:.25rem 0}
table{border-collapse:collapse;width:100%;margin:.5rem 0;font-variant-numeric:tabular-nums}th,td{border:1px solid #999;padding:.3rem .5rem;text-align:left;vertical-align:top}
footer{margin-top:2rem;border-top:1px solid #999;color:#444}@media print{body{margin:0}}`;

/** One file that needs nothing beside it: no script, no picture, nothing to fetch. */
export function asPage({ title, sections, foot }: Sheet, language: string): string {
  const body = sections.map(({ title: name, lines, table }) => `<section><h2>${safe(name)}</h2>\n${lines.map((line) => `<p>${safe(line)}</p>`).join('\n')}${tablePage(table)}</section>`);
  return `<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${safe(title)}</title><style>${STYLE}</style></head>
<body><main><h1>${safe(title)}</h1>
${body.join('\n')}
</main><footer>${foot.map((line) => `<p>${safe(line)}</p>`).join('\n')}</footer></body></html>
`;
}

function tablePage([header, ...rows]: SheetSection['table']): string {
  if (header === undefined) return '';
  const cells = (row: readonly string[], head: 'col' | 'row'): string => row.map((cell, column) => (head === 'col' || column === 0 ? `<th scope="${head}">${safe(cell)}</th>` : `<td>${safe(cell)}</td>`)).join('');
  return `\n<table><thead><tr>${cells(header, 'col')}</tr></thead>\n<tbody>${rows.map((row) => `<tr>${cells(row, 'row')}</tr>`).join('\n')}</tbody></table>`;
}

const safe = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
