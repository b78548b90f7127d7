import { expect, test } from 'vitest';
import { airDensityKgM3, standardAirDensityKgM3 } from '../../core/flight/air.ts';

test('CIPM-2007 gives 1.19931 kg/m³ at 20 °C, 101325 Pa, 50 % (Picard et al., Metrologia 45:149, 2008, quoted by others)', () => {
  expect(standardAirDensityKgM3).toBeCloseTo(1.19931, 5);
});

test('dry air at 15 °C is the 1.2250 of the ideal-gas standard atmosphere (published) within the 0.05 % by which real air is denser', () => {
  const density = airDensityKgM3({ temperatureC: 15, pressurePa: 101325, relativeHumidity: 0 });
  expect(density / 1.225).toBeGreaterThan(1);
  expect(density / 1.225).toBeLessThan(1.0005);
});

test('handbook air with a dew point of 10 °C: 1.199 at 20 °C, 1.122 at 40 °C (published)', () => {
  // Vapour pressure over water: 1228 Pa at 10 °C, 2339 Pa at 20 °C, 7384 Pa at 40 °C (steam tables, from memory).
  expect(airDensityKgM3({ temperatureC: 20, pressurePa: 101325, relativeHumidity: 1228 / 2339 })).toBeCloseTo(1.199, 3);
  expect(airDensityKgM3({ temperatureC: 40, pressurePa: 101325, relativeHumidity: 1228 / 7384 })).toBeCloseTo(1.122, 3);
});

test('damp air is lighter than dry, warm lighter than cold, high lighter than low', () => {
  const base = { temperatureC: 20, pressurePa: 101325, relativeHumidity: 0.5 };
  expect(airDensityKgM3({ ...base, relativeHumidity: 0.9 })).toBeLessThan(standardAirDensityKgM3);
  expect(airDensityKgM3({ ...base, temperatureC: 30 })).toBeLessThan(standardAirDensityKgM3);
  expect(airDensityKgM3({ ...base, pressurePa: 84000 })).toBeLessThan(standardAirDensityKgM3);
});
