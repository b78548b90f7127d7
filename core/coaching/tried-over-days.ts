import type { TriedFamily } from '../facts/advice-view.ts';
import { FAMILIES } from '../facts/vocabulary.ts';

/**
 * What several days have shown of each family, the earliest day first: means over all of their throws. Days without a target
 * count no miss, and comfort is what was said last.
 */
export function triedOverDays(days: readonly (readonly TriedFamily[])[]): TriedFamily[] {
  return FAMILIES.flatMap((family): TriedFamily[] => {
    const parts = days.flat().filter((one) => one.family === family);
    if (parts.length === 0) return [];
    return [{
      family,
      throws: parts.reduce((sum, { throws }) => sum + throws, 0),
      meanMiss: weighted(parts, ({ meanMiss }) => meanMiss),
      separation: separationOf(parts),
      comfortable: parts.findLast(({ comfortable }) => comfortable !== null)?.comfortable ?? null,
    }];
  });
}

function separationOf(parts: readonly TriedFamily[]): TriedFamily['separation'] {
  const verticalM = weighted(parts, ({ separation }) => separation?.verticalM ?? null);
  const armSideM = weighted(parts, ({ separation }) => separation?.armSideM ?? null);
  return verticalM === null || armSideM === null ? null : { verticalM, armSideM };
}

/** By the number of throws, over the days that know it. */
function weighted(parts: readonly TriedFamily[], of: (part: TriedFamily) => number | null): number | null {
  let [throws, sum] = [0, 0];
  for (const part of parts) {
    const value = of(part);
    if (value === null) continue;
    throws += part.throws;
    sum += part.throws * value;
  }
  return throws === 0 ? null : sum / throws;
}
