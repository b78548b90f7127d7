import { describe, expect, test } from 'vitest';
import { fromReleaseAndSpin, fromTheSimulator } from '../core/flight/recoveries.ts';
import { spoken, type Recovered } from '../core/flight/recovery.ts';

/**
 * Seeded throws with noise of 2–6 mm in 80–200 samples; the fit never sees a flight of its own integrator. 2000 would know a
 * coverage to ±0.5 % and there are forty of them; 6000 know it to ±0.3 %. Computed independently.
 */
const THROWS = 6000;

function expectRecovered(recovered: readonly Recovered[]): void {
  console.log(spoken(recovered));
  for (const { name, bias, covered } of recovered) {
    expect(Math.abs(bias), `bias of ${name} in standard errors`).toBeLessThan(0.1);
    expect(covered, `share of 95 % intervals of ${name} that hold the truth`).toBeGreaterThan(0.93);
    expect(covered, `share of 95 % intervals of ${name} that hold the truth`).toBeLessThan(0.97);
  }
}

describe('A path fit is unbiased to a tenth of its standard error, and its 95 % intervals cover 93–97 %', () => {
  test('on pitches of release and spin', () => expectRecovered(fromReleaseAndSpin(THROWS, 11)));
  test('on the simulated athletes, seam effects and all, with the spin measured', () => expectRecovered(fromTheSimulator(THROWS, 12, 'measured')));
  test('on the simulated athletes, seam effects and all, with the spin inferred', () => expectRecovered(fromTheSimulator(THROWS, 13, 'inferred')));
});
