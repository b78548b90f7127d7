import { quantumOf } from '../../core/session/quanta.ts';

/** Parts of an estimate carry the unit of the measure that they belong to. */
const UNITLESS = new Set(['mean', 'low', 'high']);
/** Two multiples of a quantum lie one quantum apart only up to the last bits of a double. */
const LAST_BITS = 1 + 1e-6;

/**
 * Where two views disagree, as paths with both values: numbers by more than one quantum of their field, everything else
 * (words, verdicts, on-target, what is there at all) by anything.
 */
export function disagreements(live: unknown, played: unknown, path = '', field = ''): string[] {
  if (typeof live === 'number' && typeof played === 'number') {
    return Math.abs(live - played) <= quantumOf(field) * LAST_BITS ? [] : [`${path}: live ${live}, played ${played}`];
  }
  if (typeof live !== 'object' || typeof played !== 'object' || live === null || played === null || Array.isArray(live) !== Array.isArray(played)) {
    return Object.is(live, played) ? [] : [`${path}: live ${JSON.stringify(live)}, played ${JSON.stringify(played)}`];
  }
  const names = new Set([...Object.keys(live), ...Object.keys(played)]);
  return [...names].flatMap((name) => {
    if (!(name in live) || !(name in played)) return [`${path}.${name}: only ${name in live ? 'live' : 'played'}`];
    const inner = Array.isArray(live) || UNITLESS.has(name) ? field : name;
    return disagreements((live as Record<string, unknown>)[name], (played as Record<string, unknown>)[name], `${path}.${name}`, inner);
  });
}

/** How many numbers a view holds, and how many of them are the same to the last bit in both. */
export function sameBits(live: unknown, played: unknown): { readonly numbers: number; readonly same: number } {
  if (typeof live === 'number') return { numbers: 1, same: Object.is(live, played) ? 1 : 0 };
  if (typeof live !== 'object' || live === null) return { numbers: 0, same: 0 };
  return Object.entries(live)
    .map(([name, value]) => sameBits(value, (played as Record<string, unknown> | null)?.[name]))
    .reduce((sum, one) => ({ numbers: sum.numbers + one.numbers, same: sum.same + one.same }), { numbers: 0, same: 0 });
}
