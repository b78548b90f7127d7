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
const known = new Map<string, Rule>();

interface Rule {
  readonly quantum: number;
  /** How many quanta are one: an integer divisor, so that 0.1 stays 0.1. */
  readonly per: number;
  /** Of an estimate's parts, which carry the unit of the measure that they belong to. */
  readonly isPart: boolean;
}

function ruleOf(field: string): Rule {
  const before = known.get(field);
  if (before !== undefined) return before;
  const quantum = QUANTA.find(([suffix]) => field.endsWith(suffix))?.[1] ?? PLAIN_QUANTUM;
  const rule = { quantum, per: Math.round(1 / quantum), isPart: field === 'mean' || field === 'low' || field === 'high' };
  known.set(field, rule);
  return rule;
}

/** The quantum of a view field, by the unit at the end of its name. */
export function quantumOf(field: string): number {
  return ruleOf(field).quantum;
}

/** Every number of a view rounded to the quantum of its field; numbers in a list take the quantum of the list's name. */
export function rounded<T>(value: T, field = ''): T {
  return under(value, ruleOf(field)) as T;
}

/** What needs no rounding stays the same object: copying costs more than looking. */
function under(value: unknown, rule: Rule): unknown {
  if (typeof value === 'number') return Number.isInteger(value) ? value : roundTo(value, rule.per);
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((item: unknown) => under(item, rule));
  const before = value as Record<string, unknown>;
  let after = before;
  // A list of the names would be made anew for each of two hundred throws.
  for (const name in before) {
    const one = before[name];
    if (one === null || (typeof one !== 'number' && typeof one !== 'object')) continue;
    const own = ruleOf(name);
    const now = under(one, own.isPart ? rule : own);
    if (Object.is(now, one)) continue;
    if (after === before) after = { ...before };
    after[name] = now;
  }
  return after;
}

function roundTo(value: number, per: number): number {
  const result = Math.round(value * per) / per;
  return result === 0 ? 0 : result;
}
