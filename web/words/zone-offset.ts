/** By zone: to make one is slow, and one that scrubs asks at every frame. */
const FORMATS = new Map<string, Intl.DateTimeFormat>();

/** How far a time zone is from UTC at a moment: "−06:00", "+05:30", "+00:00". @throws RangeError for a zone that nobody knows */
export function zoneOffset(atMs: number, timeZone: string): string {
  const format = FORMATS.get(timeZone) ?? new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longOffset' });
  FORMATS.set(timeZone, format);
  const parts = format.formatToParts(atMs);
  const name = parts.find(({ type }) => type === 'timeZoneName')!.value.replace('GMT', '');
  return (name === '' ? '+00:00' : name).replace('-', '−');
}
