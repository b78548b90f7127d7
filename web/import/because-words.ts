import type { Because } from '../../core/imports/guess.ts';
import type { Column } from '../../core/imports/layout.ts';
import { numberText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';

/** A guess in words, and whether a person should look at it again. */
export interface BecauseSaid {
  readonly said: string;
  readonly lookTwice: boolean;
}

type Imports = Speech['words']['imports'];

/** A unit as it is said; most are said as they are written. */
export function unitText(unit: string, say: Imports): string {
  return Object.hasOwn(say.units, unit) ? say.units[unit as keyof Imports['units']] : unit;
}

/** What the guess of a column rests on, in one line. */
export function becauseText({ unit }: Pick<Column, 'unit'>, because: Because, { words: { imports: say }, language }: Speech): BecauseSaid {
  if (because.taken !== null) return { said: say.why.taken(say.fields[because.taken]), lookTwice: false };
  if (because.words.length === 0) return { said: say.why.noWord, lookTwice: false };
  const parts = [say.why.words(because.words.join(' ')), unitWhy(unit, because, say, (value) => numberText(value, Number.isInteger(value) ? 0 : 1, language))];
  if (because.alsoFits.length > 0) parts.push(say.why.also(because.alsoFits.map((other) => unitText(other, say)).join(', ')));
  if (because.towards === 'guessed') parts.push(say.why.side);
  return { said: parts.filter((part) => part !== null).join('; '), lookTwice: because.unit === 'guessed' || because.alsoFits.length > 0 || because.towards === 'guessed' };
}

function unitWhy(unit: string | null, because: Because, say: Imports, number: (value: number) => string): string | null {
  if (unit === null) return null;
  const said = unitText(unit, say);
  switch (because.unit) {
    case 'header': return say.why.header(said);
    case 'values': return because.range === null ? say.why.form(said) : say.why.values(number(because.range.low), number(because.range.high), said);
    case 'only-one': return say.why.only(said);
    case 'like-the-others': return say.why.others(said);
    case 'guessed': return say.why.guessed;
    case null: return null;
  }
}
