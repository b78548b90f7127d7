const formats = new Map<string, Intl.DateTimeFormat>();
/** Clocks change at whole quarters of an hour; throws of a sitting ask for the same few again and again. */
const QUARTER_MS = 900_000;
const lastAsked = new Map<string, { readonly quarter: number; readonly offset: string }>();

/** A moment as the clock on the bullpen's wall shows it, with its offset: 2026-03-14T17:05:12.345-05:00. @throws RangeError for a zone that nobody knows */
export function timeIn(timeZone: string, atMs: number): string {
  const offset = offsetIn(timeZone, atMs);
  return `${new Date(atMs + minutesOf(offset) * 60_000).toISOString().slice(0, -1)}${offset}`;
}

function offsetIn(timeZone: string, atMs: number): string {
  const quarter = Math.floor(atMs / QUARTER_MS);
  const known = lastAsked.get(timeZone);
  if (known?.quarter === quarter) return known.offset;
  const format = formats.get(timeZone) ?? new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longOffset' });
  formats.set(timeZone, format);
  const named = format.formatToParts(atMs).find(({ type }) => type === 'timeZoneName')!.value;
  const offset = /[+-]\d\d:\d\d/.exec(named)?.[0] ?? '+00:00';
  lastAsked.set(timeZone, { quarter, offset });
  return offset;
}

function minutesOf(offset: string): number {
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return offset.startsWith('-') ? -minutes : minutes;
}
