import type { IsoDay } from '../facts/care-view.ts';

const formats = new Map<string, Intl.DateTimeFormat>();

/** The calendar day of a moment in a time zone. @throws RangeError for a zone that nobody knows */
export function dayIn(timeZone: string, atMs: number): IsoDay {
  const format = formats.get(timeZone) ?? new Intl.DateTimeFormat('en-US-u-ca-gregory-nu-latn', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  formats.set(timeZone, format);
  const parts = format.formatToParts(atMs);
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((one) => one.type === type)!.value;
  return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
}
