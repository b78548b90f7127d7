/**
 * Views are rounded, because sin, exp and pow differ in their last bits between engines: two engines that fold the same
 * facts agree within one quantum on numbers and exactly on words. A quantum is far below what any device can see.
 */
const QUANTA: readonly (readonly [suffix: string, quantum: number])[] = [
  ['Mps', 1e-3],
  ['M2', 1e-6],
  ['M', 1e-4],
  ['Rad', 1e-4],
  ['Rpm', 1e-1],
  ['Ms', 1],
  ['S', 1e-5],
  ['Widths', 1e-2],
  // Covariances, m²: a tenth of an inch is 6.5e-6.
  ['measurement', 1e-7],
  ['model', 1e-7],
];
const PLAIN_QUANTUM = 1e-4;

/** Of the names met so far: there are as many as views have fields. */
const known = new Map<string, number>();

/** The quantum of a view field, by the unit at the end of its name. */
export function quantumOf(field: string): number {
  const quantum = known.get(field) ?? QUANTA.find(([suffix]) => field.endsWith(suffix))?.[1] ?? PLAIN_QUANTUM;
  known.set(field, quantum);
  return quantum;
}

/** Every number of a view rounded to the quantum of its field; numbers in a list take the quantum of the list's name. */
export function rounded<T>(value: T, field = ''): T {
  if (typeof value === 'number') return (Number.isInteger(value) ? value : roundTo(value, quantumOf(field))) as T;
  if (Array.isArray(value)) return value.map((item: unknown) => rounded(item, field)) as T;
  if (value === null || typeof value !== 'object') return value;
  const all: Record<string, unknown> = {};
  // A loop, because every view goes through it name by name.
  for (const name of Object.keys(value)) all[name] = rounded((value as Record<string, unknown>)[name], unitless(name) ? field : name);
  return all as T;
}

/** Names of an estimate's parts, which carry the unit of the measure they belong to. */
function unitless(name: string): boolean {
  return name === 'mean' || name === 'low' || name === 'high';
}

/** By an integer divisor, so that 0.1 stays 0.1. */
function roundTo(value: number, quantum: number): number {
  const per = Math.round(1 / quantum);
  const result = Math.round(value * per) / per;
  return result === 0 ? 0 : result;
}
