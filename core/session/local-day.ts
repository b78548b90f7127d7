import type { IsoDay } from '../facts/care-view.ts';

const formats = new Map<string, Intl.DateTimeFormat>();
/** Clocks are whole quarters of an hour apart, so within one no day ends; throws of a sitting ask for the same few again and again. */
const QUARTER_MS = 900_000;
const lastAsked = new Map<string, { readonly quarter: number; readonly day: IsoDay }>();

/** The calendar day of a moment in a time zone. @throws RangeError for a zone that nobody knows */
export function dayIn(timeZone: string, atMs: number): IsoDay {
  const quarter = Math.floor(atMs / QUARTER_MS);
  const known = lastAsked.get(timeZone);
  if (known?.quarter === quarter) return known.day;
  const day = formatted(timeZone, atMs);
  lastAsked.set(timeZone, { quarter, day });
  return day;
}

function formatted(timeZone: string, atMs: number): IsoDay {
  const format = formats.get(timeZone) ?? new Intl.DateTimeFormat('en-US-u-ca-gregory-nu-latn', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  formats.set(timeZone, format);
  const parts = format.formatToParts(atMs);
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((one) => one.type === type)!.value;
  return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
}

/** Whether a zone of this name is known here. */
export function isTimeZone(timeZone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
