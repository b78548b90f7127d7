/** How far a time zone is from UTC at a moment: "−06:00", "+05:30", "+00:00". @throws RangeError for a zone that nobody knows */
export function zoneOffset(atMs: number, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longOffset' }).formatToParts(atMs);
  const name = parts.find(({ type }) => type === 'timeZoneName')!.value.replace('GMT', '');
  return (name === '' ? '+00:00' : name).replace('-', '−');
}
