/** A unit that a picture is ruled in. */
export interface Ruling {
  readonly perSi: number;
  readonly unit: string;
}

/** Steps a reader can count in. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/** Round values from `low` to `high` (SI), far enough apart for their labels; zero left out. Each in SI and as read. */
export function ticksBetween(low: number, high: number, pxPerSi: number, leastPx: number, { perSi }: Ruling): { readonly si: number; readonly value: number }[] {
  const step = STEPS.find((candidate) => (candidate / perSi) * pxPerSi >= leastPx) ?? STEPS.at(-1)!;
  const first = Math.ceil((low * perSi) / step - 1e-9);
  const last = Math.floor((high * perSi) / step + 1e-9);
  const ticks = [];
  for (let index = first; index <= last; index += 1) if (index !== 0) ticks.push({ si: (index * step) / perSi, value: index * step });
  return ticks;
}
