import { FIELDS, FORMS, type Field, type FieldForm, type Side } from './fields.ts';
import { NAMED, sideIn, unitIn, UNIT_WORDS, wordsOf } from './header-words.ts';
import type { Column } from './layout.ts';
import { clockDegrees, dayOf, momentOf, numberOf, textOf, timeOfDayMs, type Cell, type DateOrder, type Decimal } from './read-cell.ts';

/** What a guess rests on, for a screen to say in words. */
export interface Because {
  /** Words of the header that name the field; empty where nothing names one. */
  readonly words: readonly string[];
  /** Where the unit comes from; null where the field has none. */
  readonly unit: 'header' | 'values' | 'only-one' | 'like-the-others' | 'guessed' | null;
  /** Of the values that are numbers. */
  readonly range: { readonly low: number; readonly high: number } | null;
  /** Other units that the values would fit as well. */
  readonly alsoFits: readonly string[];
  /** Where the side that is positive comes from; null where there are no sides. */
  readonly towards: 'header' | 'guessed' | null;
  /** The field is another column's already, which names it better. */
  readonly taken: Field | null;
}

export interface ColumnGuess {
  readonly column: Column;
  readonly because: Because;
}

/** A share of the values of a column has to be readable as what the column is guessed to be. */
const MOST = 0.8;
const NOTHING: Omit<Because, 'taken'> = { words: [], unit: null, range: null, alsoFits: [], towards: null };

interface Named {
  readonly field: Field;
  readonly words: readonly string[];
  readonly score: number;
}

/**
 * For each column of a file which field it is and in which unit, from the words of its header and from its values. Each field is
 * given to one column at most. What is not named is not guessed.
 * @param rows the first rows of the file, each with a cell for every column
 */
export function guessColumns(headers: readonly string[], rows: readonly (readonly Cell[])[], decimal: Decimal): ColumnGuess[] {
  const values = headers.map((_, index) => rows.map((row) => row[index]).filter((cell) => textOf(cell) !== ''));
  const named = headers.map((header, index) => bestName(wordsOf(header), values[index]!, decimal));
  const guesses = headers.map((header, index): ColumnGuess => {
    const own = named[index] ?? null;
    if (own === null) return { column: { header, field: null, unit: null, towards: null }, because: { ...NOTHING, taken: null } };
    const better = named.findIndex((other, at) => other?.field === own.field && (other.score > own.score || (other.score === own.score && at < index)));
    if (better !== -1) return { column: { header, field: null, unit: null, towards: null }, because: { ...NOTHING, words: own.words, taken: own.field } };
    return guessed(header, own, values[index]!, decimal);
  });
  return guesses.map((guess) => likeTheOthers(guess, guesses));
}

/** A comma between digits is a decimal one where no point is, and where the comma does not part columns. */
export function guessDecimal(rows: readonly (readonly Cell[])[]): Decimal {
  const texts = rows.flat().map(textOf);
  const commas = texts.filter((text) => /^[+-]?\d+,\d+$/.test(text)).length;
  const points = texts.filter((text) => /^[+-]?\d+\.\d+$/.test(text)).length;
  return commas > points ? ',' : '.';
}

function bestName(words: readonly string[], values: readonly Cell[], decimal: Decimal): Named | null {
  const found = FIELDS.flatMap((field): Named[] => {
    if (!readable(FORMS[field], values, decimal)) return [];
    return NAMED[field].flatMap((line) => {
      const needed = line.split(' ');
      if (!needed.every((word) => words.includes(word))) return [];
      const left = words.filter((word) => !needed.includes(word) && UNIT_WORDS[word] === undefined && !/^\d+$/.test(word)).length;
      return [{ field, words: needed, score: needed.length * 10 - left }];
    });
  });
  return found.reduce<Named | null>((best, one) => (best === null || one.score > best.score ? one : best), null);
}

function readable({ kind }: FieldForm, values: readonly Cell[], decimal: Decimal): boolean {
  const isRead = (cell: Cell): boolean => {
    switch (kind) {
      case 'number': return numberOf(cell, decimal) !== null;
      case 'tilt': return clockDegrees(cell) !== null || numberOf(cell, decimal) !== null;
      case 'text': return typeof cell !== 'object';
      case 'date': return (['year-first', 'month-first', 'day-first'] as const).some((order) => dayOf(textOf(cell), order) !== null);
      case 'time': return timeOfDayMs(textOf(cell)) !== null;
      case 'moment': return momentOf(cell, 'year-first') !== null || momentOf(cell, 'month-first') !== null || momentOf(cell, 'day-first') !== null || (numberOf(cell, '.') ?? 0) > 5e8;
      case 'list': return Array.isArray(cell);
      case 'object': return typeof cell === 'object' && !Array.isArray(cell);
    }
  };
  const read = values.filter(isRead).length;
  // A column of plain numbers is no text, or every number would do for a name.
  const likely = kind !== 'text' || values.length === 0 || values.some((cell) => numberOf(cell, decimal) === null);
  return likely && read >= MOST * values.length;
}

function guessed(header: string, { field, words: needed }: Named, values: readonly Cell[], decimal: Decimal): ColumnGuess {
  const form = FORMS[field];
  const words = wordsOf(header);
  const numbers = values.flatMap((cell) => numberOf(cell, decimal) ?? []);
  const range = form.kind === 'number' && numbers.length > 0 ? { low: Math.min(...numbers), high: Math.max(...numbers) } : null;
  const { unit, from, alsoFits } = unitOf(form, words, values, numbers);
  const side = form.sided ? sideIn(words) : null;
  const towards: Side | null = form.sided ? (side ?? 'right') : null;
  return {
    column: { header, field, unit, towards },
    because: { words: needed, unit: from, range, alsoFits, towards: form.sided ? (side === null ? 'guessed' : 'header') : null, taken: null },
  };
}

interface UnitGuess {
  readonly unit: string | null;
  readonly from: Because['unit'];
  readonly alsoFits: readonly string[];
}

function unitOf(form: FieldForm, words: readonly string[], values: readonly Cell[], numbers: readonly number[]): UnitGuess {
  const units = form.units.map(({ unit }) => unit);
  if (units.length === 0) return { unit: null, from: null, alsoFits: [] };
  if (form.kind === 'date' || form.kind === 'moment') return dateOrder(form.kind, values);
  if (form.kind === 'tilt' && values.some((cell) => clockDegrees(cell) !== null)) return { unit: 'clock', from: 'values', alsoFits: [] };
  const named = unitIn(words, units);
  if (named !== null) return { unit: named, from: 'header', alsoFits: [] };
  if (units.length === 1) return { unit: units[0]!, from: 'only-one', alsoFits: [] };
  if (form.kind === 'tilt') return { unit: 'deg', from: 'values', alsoFits: [] };
  const fitting = form.units.filter(({ usual }) => usual !== null && numbers.length > 0 && numbers.filter((value) => value >= usual[0] && value <= usual[1]).length >= MOST * numbers.length).map(({ unit }) => unit);
  return fitting.length === 0 ? { unit: units[0]!, from: 'guessed', alsoFits: [] } : { unit: fitting[0]!, from: 'values', alsoFits: fitting.slice(1) };
}

function dateOrder(kind: 'date' | 'moment', values: readonly Cell[]): UnitGuess {
  const numbers = kind === 'moment' ? values.flatMap((cell) => numberOf(cell, '.') ?? []) : [];
  if (numbers.length > 0 && numbers.length === values.length) return { unit: Math.max(...numbers) > 1e11 ? 'ms' : 's', from: 'values', alsoFits: [] };
  const reads = (order: DateOrder): boolean => values.every((cell) => (kind === 'date' ? dayOf(textOf(cell), order) : momentOf(cell, order)) !== null);
  const [first, ...others] = (['year-first', 'month-first', 'day-first'] as const).filter(reads);
  return { unit: first ?? 'year-first', from: first === undefined ? 'guessed' : 'values', alsoFits: others };
}

const FAMILIES: readonly (readonly Field[])[] = [['verticalBreak', 'horizontalBreak'], ['releaseHeight', 'releaseSide', 'extension', 'plateHeight', 'plateSide'], ['releaseSpeed', 'plateSpeed']];

/** Numbers near zero fit any unit: a column that leaves its unit open takes the one of its neighbours where it fits that as well. */
function likeTheOthers(guess: ColumnGuess, all: readonly ColumnGuess[]): ColumnGuess {
  const { column, because } = guess;
  if (because.unit !== 'values' || because.alsoFits.length === 0) return guess;
  const family = FAMILIES.find((fields) => column.field !== null && fields.includes(column.field)) ?? [];
  const sure = all.find((other) => other.column.field !== column.field && other.column.field !== null && family.includes(other.column.field) && (other.because.unit === 'header' || (other.because.unit === 'values' && other.because.alsoFits.length === 0)));
  const unit = sure?.column.unit ?? null;
  if (unit === null || (unit !== column.unit && !because.alsoFits.includes(unit))) return guess;
  return { column: { ...column, unit }, because: { ...because, unit: 'like-the-others', alsoFits: [] } };
}
