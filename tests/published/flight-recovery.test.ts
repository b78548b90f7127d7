import { expect, test } from 'vitest';
import { fromReleaseAndSpin, fromTheSimulator } from '../core/flight/recoveries.ts';
import { spoken } from '../core/flight/recovery.ts';

/** A sample of flight-recovery.prove.ts, with room for three and a half standard deviations of so few throws. Computed independently. */
const THROWS = 60;
const farthestBias = 0.1 + 3.5 / Math.sqrt(THROWS);
const leastCovered = 0.95 - 3.5 * Math.sqrt((0.95 * 0.05) / THROWS);

test.each([
  ['pitches of release and spin', () => fromReleaseAndSpin(THROWS, 1)],
  ['the simulated athletes with the spin measured', () => fromTheSimulator(THROWS, 2, 'measured')],
  ['the simulated athletes with the spin inferred', () => fromTheSimulator(THROWS, 3, 'inferred')],
])('every number of the fit is recovered on %s, within the errors it tells', (_, recover) => {
  const recovered = recover();
  console.log(spoken(recovered));
  for (const { name, bias, covered } of recovered) {
    expect(Math.abs(bias), `bias of ${name} in standard errors`).toBeLessThan(farthestBias);
    expect(covered, `share of 95 % intervals of ${name} that hold the truth`).toBeGreaterThan(leastCovered);
  }
});
