/** Whether a Wall was started without keyboard or pointer: `?kiosk`. It has no controls then, and no cursor. */
export function kioskIn(search: string): boolean {
  return new URLSearchParams(search).has('kiosk');
}

/** After how many minutes without a fact the Wall rests, where its address says so: `?rest=45`; `?rest=0` never. */
export function restMinutesIn(search: string): number | null {
  const asked = new URLSearchParams(search).get('rest');
  const minutes = asked === null || asked.trim() === '' ? Number.NaN : Number(asked);
  return minutes >= 0 && minutes <= 24 * 60 ? minutes : null;
}
