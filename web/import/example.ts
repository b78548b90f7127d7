import type { Language } from '../words/language.ts';

/** One invented athlete, with enough fastballs for a baseline and two changeups; any other columns could stand there too. */
const HEADS: Readonly<Record<Language, readonly string[]>> = {
  en: ['Date', 'Time', 'Pitcher', 'Pitch', 'Speed (mph)', 'Spin (rpm)', 'Tilt', 'Vertical break (in)', 'Horizontal break arm side (in)'],
  es: ['Fecha', 'Hora', 'Lanzador', 'Lanzamiento', 'Velocidad (mph)', 'Giro (rpm)', 'Inclinación', 'Quiebre vertical (in)', 'Quiebre horizontal brazo (in)'],
};
const PITCHER: Readonly<Record<Language, string>> = { en: 'Alba Invented', es: 'Alba Inventada' };
const PITCHES: Readonly<Record<Language, { readonly fastball: string; readonly changeup: string }>> = { en: { fastball: 'fastball', changeup: 'changeup' }, es: { fastball: 'recta', changeup: 'cambio' } };
const THROWS = [
  ['17:05:10', 'fastball', 81.2, 2010, '1:00', 15.8, 7.1],
  ['17:05:41', 'fastball', 80.6, 1985, '1:00', 15.2, 7.6],
  ['17:06:15', 'fastball', 81.5, 2032, '0:45', 16.3, 6.4],
  ['17:06:52', 'fastball', 80.9, 2004, '1:00', 15.5, 7.2],
  ['17:07:30', 'fastball', 81.1, 2018, '1:00', 15.9, 7.3],
  ['17:09:02', 'changeup', 72.4, 1540, '2:15', 7.9, 13.6],
  ['17:09:40', 'changeup', 72.9, 1580, '2:00', 8.4, 12.9],
] as const;

/** The columns and rows of an example file, as a spreadsheet of a language writes them. */
export function exampleRows(language: Language): { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const written = (value: string | number): string => (typeof value === 'string' || language === 'en' ? String(value) : String(value).replace('.', ','));
  return { heads: HEADS[language], rows: THROWS.map(([time, pitch, ...measured]) => ['2025-05-03', time, PITCHER[language], PITCHES[language][pitch], ...measured.map(written)]) };
}

/** The same as a CSV file: where commas stand in numbers, semicolons part the columns. */
export function exampleCsv(language: Language): string {
  const { heads, rows } = exampleRows(language);
  return [heads, ...rows].map((cells) => cells.join(language === 'en' ? ',' : ';')).join('\n') + '\n';
}
