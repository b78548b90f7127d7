import { expect, test } from 'vitest';
import { airDensityAt, airDensityKgM3, standardAirDensityKgM3, standardPressurePa } from '../../core/flight/air.ts';

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

test('pressure at altitude is that of the U.S. Standard Atmosphere, 1976: 22632 Pa at 11 km; 14.175, 12.230 and 10.108 psi at 1000, 5000 and 10000 ft (quoted by others)', () => {
  const psi = (feet: number): number => standardPressurePa(feet * 0.3048) / 6894.757;
  expect(Math.abs(standardPressurePa(11_000) - 22632)).toBeLessThan(1);
  expect(psi(1000)).toBeCloseTo(14.175, 2);
  expect(Math.abs(psi(5000) - 12.23)).toBeLessThan(0.003); // printed tables differ by so much: 12.228 and 12.230
  expect(psi(10_000)).toBeCloseTo(10.108, 2);
  expect(standardPressurePa(0)).toBe(101325);
});

test('the air of a mound: a barometer goes before the altitude, and without either the mound lies at sea level', () => {
  const warm = { temperatureC: 28, relativeHumidity: 0.4 };
  expect(airDensityAt(warm)).toBe(airDensityKgM3({ ...warm, pressurePa: 101325 }));
  expect(airDensityAt({ ...warm, pressurePa: 84_000, altitudeM: 0 })).toBe(airDensityKgM3({ ...warm, pressurePa: 84_000 }));
  // A mile up, air is a sixth thinner: 0.8234 of the pressure in the standard atmosphere (computed independently).
  expect(airDensityAt({ ...warm, altitudeM: 1609 }) / airDensityAt(warm)).toBeCloseTo(0.8234, 2);
});
