/** 0 up to `from`, 1 from `to` on, and smooth between: 3x² − 2x³. `from` may lie above `to`: then it falls. */
export function ramp(value: number, from: number, to: number): number {
  const x = Math.min(1, Math.max(0, (value - from) / (to - from)));
  return x * x * (3 - 2 * x);
}

/** The mean of the ramp over an interval, so that what is not known exactly is not judged as if it were. */
export function rampOver(low: number, high: number, from: number, to: number): number {
  if (high <= low) return ramp(low, from, to);
  let sum = 0;
  for (let step = 0; step < STEPS; step += 1) sum += ramp(low + ((step + 0.5) / STEPS) * (high - low), from, to);
  return sum / STEPS;
}
const STEPS = 50;
