import { UNIT_WORDS, wordsOf } from './header-words.ts';

/** What a cell holds: text out of a CSV, any JSON value out of JSON Lines. */
export type Cell = unknown;
export type Decimal = '.' | ',';

export function textOf(cell: Cell): string {
  if (typeof cell === 'string') return cell.trim();
  return cell === null || cell === undefined ? '' : typeof cell === 'object' ? JSON.stringify(cell) : String(cell);
}

const GROUPED = { '.': /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/, ',': /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$/ } as const;
const PLAIN = { '.': /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i, ',': /^[+-]?(?:\d+,?\d*|,\d+)$/ } as const;

/** A number as it is written in a file, perhaps with its unit behind it; null for anything else. */
export function numberOf(cell: Cell, decimal: Decimal): number | null {
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : null;
  const text = textOf(cell).replace(/\s*\p{L}[\p{L}/]*$|\s*[%°"']$/u, (unit) => (isUnit(unit) ? '' : unit)).replace('−', '-');
  const grouping = decimal === '.' ? ',' : '.';
  const plain = GROUPED[decimal].test(text) ? text.replaceAll(grouping, '') : text;
  // A point is a point wherever no comma is about.
  const written = PLAIN[decimal].test(plain) ? plain.replace(',', '.') : PLAIN['.'].test(plain) ? plain : '';
  return written === '' ? null : Number(written);
}

function isUnit(text: string): boolean {
  return wordsOf(text).every((word) => UNIT_WORDS[word] !== undefined);
}

/** Degrees of a clock face, "1:15" or "1h15", clockwise from 12; null where it is no such time. */
export function clockDegrees(cell: Cell): number | null {
  const [, hour, minute] = /^(1[0-2]|0?[0-9])[:h]([0-5]\d)(?::00)?$/.exec(textOf(cell)) ?? [];
  return hour === undefined ? null : (Number(hour) % 12) * 30 + Number(minute) / 2;
}

export type DateOrder = 'year-first' | 'month-first' | 'day-first';

/** A calendar day as YYYY-MM-DD; null where there is no such day. */
export function dayOf(text: string, order: DateOrder): string | null {
  const [, a, b, c] = /^(\d{1,4})[-/. ](\d{1,2})[-/. ](\d{1,4})$/.exec(text.trim()) ?? [];
  if (a === undefined) return null;
  const [year, month, day] = order === 'year-first' ? [a, b, c] : order === 'month-first' ? [c, a, b] : [c, b, a];
  if (year!.length === 3 || year!.length === 1) return null;
  const full = year!.length === 2 ? 2000 + Number(year) : Number(year);
  const iso = `${String(full).padStart(4, '0')}-${month!.padStart(2, '0')}-${day!.padStart(2, '0')}`;
  const read = new Date(`${iso}T00:00:00Z`);
  return Number.isNaN(read.getTime()) || read.toISOString().slice(0, 10) !== iso ? null : iso;
}

/** Milliseconds since midnight of a time of day, "17:05", "5:05:11.25 pm"; null where there is no such time. */
export function timeOfDayMs(text: string): number | null {
  const [, hour, minute, second, half] = /^(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?\s*([ap]\.?\s?m\.?)?$/i.exec(text.trim()) ?? [];
  if (hour === undefined) return null;
  const [h, m, s] = [Number(hour), Number(minute), Number((second ?? '0').replace(',', '.'))];
  if (m > 59 || s >= 60 || h > 23 || (half !== undefined && (h > 12 || h === 0))) return null;
  const hours = half === undefined ? h : (h % 12) + (/^p/i.test(half) ? 12 : 0);
  return Math.round(((hours * 60 + m) * 60 + s) * 1000);
}

/** A moment as it is written: absolute where it says its zone, otherwise a day and perhaps a time of day. */
export type Moment = { readonly kind: 'absolute'; readonly atMs: number } | { readonly kind: 'local'; readonly day: string; readonly timeMs: number | null };

export function momentOf(cell: Cell, unit: string): Moment | null {
  if (unit === 'ms' || unit === 's') {
    const value = numberOf(cell, '.');
    return value === null || value <= 0 ? null : { kind: 'absolute', atMs: Math.round(unit === 's' ? value * 1000 : value) };
  }
  const text = textOf(cell);
  if (/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}.*(?:Z|[+-]\d{2}:?\d{2})$/i.test(text)) {
    const atMs = Date.parse(text);
    return Number.isNaN(atMs) ? null : { kind: 'absolute', atMs };
  }
  const [, date, time] = /^(\S+?)(?:(?:T|,?\s+)(.+))?$/.exec(text) ?? [];
  const day = date === undefined ? null : dayOf(date, unit as DateOrder);
  const timeMs = time === undefined ? null : timeOfDayMs(time);
  return day === null || (time !== undefined && timeMs === null) ? null : { kind: 'local', day, timeMs };
}
