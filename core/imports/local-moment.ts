const formats = new Map<string, Intl.DateTimeFormat>();
const HOUR_MS = 3_600_000;
const QUARTER_MS = 900_000;
/** Offsets change at whole quarters of an hour, and the rows of a file ask for the same few again and again. */
const offsets = new Map<string, number>();

/**
 * The moment of a time of day in a time zone, milliseconds since 1970. A time that a clock change leaves out counts as if the
 * clock had gone on; of one that comes twice the first is meant.
 * @throws RangeError for a zone that nobody knows
 */
export function momentIn(timeZone: string, day: string, timeOfDayMs: number): number {
  const wall = Date.parse(`${day}T00:00:00Z`) + timeOfDayMs;
  const first = wall - offsetMs(timeZone, wall - 14 * HOUR_MS);
  const second = wall - offsetMs(timeZone, first);
  return offsetMs(timeZone, second) === wall - second ? second : first;
}

/** How far the clocks of a zone are ahead of universal time at a moment. */
function offsetMs(timeZone: string, atMs: number): number {
  const quarter = Math.floor(atMs / QUARTER_MS) * QUARTER_MS;
  const key = `${timeZone} ${quarter}`;
  const known = offsets.get(key);
  if (known !== undefined) return known;
  const format = formats.get(timeZone) ?? new Intl.DateTimeFormat('en-US-u-ca-gregory-nu-latn', { timeZone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit' });
  formats.set(timeZone, format);
  const parts = new Map(format.formatToParts(quarter).map(({ type, value }) => [type, value]));
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.get(type)!.padStart(2, '0');
  const wall = Date.parse(`${part('year').padStart(4, '0')}-${part('month')}-${part('day')}T${part('hour')}:${part('minute')}:${part('second')}Z`);
  if (offsets.size > 5000) offsets.clear();
  offsets.set(key, wall - quarter);
  return wall - quarter;
}
