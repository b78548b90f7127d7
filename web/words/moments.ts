import { LOCALE, type Language } from './language.ts';
import { zoneOffset } from './zone-offset.ts';

/** Times of day and dates, in the time zone of the session; null means that of the screen. */

/** By language, zone and what is written: to make one is slow. */
const FORMATS = new Map<string, Intl.DateTimeFormat>();

/** Hours, minutes and seconds. */
export function timeText(atMs: number, timeZone: string | null, language: Language): string {
  return written(atMs, timeZone, language, { hour: 'numeric', minute: '2-digit', second: '2-digit', hour12: false });
}

/** Hours and minutes. */
export function hourText(atMs: number, timeZone: string | null, language: Language): string {
  return written(atMs, timeZone, language, { hour: 'numeric', minute: '2-digit', hour12: false });
}

/** Day, month and year. */
export function dateText(atMs: number, timeZone: string | null, language: Language): string {
  return written(atMs, timeZone, language, { day: 'numeric', month: 'short', year: 'numeric' });
}

/** Day, hour and the zone's offset, for a moment that stands alone: "Sep 21, 2026, 10:13 −04:00". */
export function momentText(atMs: number, timeZone: string, language: Language): string {
  return `${dateText(atMs, timeZone, language)}, ${hourText(atMs, timeZone, language)} ${zoneOffset(atMs, timeZone)}`;
}

/** A calendar day, given as YYYY-MM-DD. */
export function isoDayText(day: string, language: Language): string {
  return dateText(Date.parse(`${day}T00:00:00Z`), 'UTC', language);
}

/** A length of time as minutes and seconds: 75 s are 1:15. */
export function lengthText(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

function written(atMs: number, timeZone: string | null, language: Language, how: Intl.DateTimeFormatOptions): string {
  const key = `${language} ${timeZone ?? ''} ${Object.keys(how).join(' ')}`;
  const format = FORMATS.get(key) ?? new Intl.DateTimeFormat(LOCALE[language], { ...how, ...(timeZone === null ? {} : { timeZone }) });
  FORMATS.set(key, format);
  return format.format(atMs).replace(/^24:/, '00:');
}
