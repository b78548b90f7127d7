export interface AirConditions {
  readonly temperatureC: number;
  readonly pressurePa: number;
  /** 0 dry, 1 saturated. */
  readonly relativeHumidity: number;
}

const celsiusZeroK = 273.15;
const gasConstant = 8.314472; // J/(mol K), the value the equation was published with
const dryAirMolarMassKg = 28.96546e-3; // at a CO2 fraction of 0.0004
const waterMolarMassKg = 18.01528e-3;

/**
 * Density of moist air, kg/m³, by the CIPM-2007 equation (Picard, Davis, Gläser & Fujii, Metrologia 45:149, 2008,
 * eq. 1 and appendix A). Meant for 15–27 °C and 600–1100 hPa; outside it stays smooth and is good to about 0.1 % over
 * ball-park weather. NaN in, NaN out.
 */
export function airDensityKgM3({ temperatureC, pressurePa, relativeHumidity }: AirConditions): number {
  const temperatureK = temperatureC + celsiusZeroK;
  const vapour = vapourMoleFraction(temperatureC, pressurePa, relativeHumidity);
  const compressibility = compressibilityFactor(temperatureC, pressurePa, vapour);
  const dry = (pressurePa * dryAirMolarMassKg) / (compressibility * gasConstant * temperatureK);
  return dry * (1 - vapour * (1 - waterMolarMassKg / dryAirMolarMassKg));
}

function vapourMoleFraction(temperatureC: number, pressurePa: number, relativeHumidity: number): number {
  const t = temperatureC + celsiusZeroK;
  const saturationPa = Math.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t);
  const enhancement = 1.00062 + 3.14e-8 * pressurePa + 5.6e-7 * temperatureC ** 2;
  return (relativeHumidity * enhancement * saturationPa) / pressurePa;
}

function compressibilityFactor(t: number, pressurePa: number, vapour: number): number {
  const ratio = pressurePa / (t + celsiusZeroK);
  const first = 1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t;
  const moist = (5.707e-6 - 2.051e-8 * t) * vapour + (1.9898e-4 - 2.376e-6 * t) * vapour ** 2;
  return 1 - ratio * (first + moist) + ratio ** 2 * (1.83e-11 - 0.765e-8 * vapour ** 2);
}

/** The lowest layer of the U.S. Standard Atmosphere, 1976: 15 °C and 101325 Pa at sea level, 6.5 °C colder for each kilometre. */
const seaLevel = { pressurePa: 101325, temperatureK: 288.15, lapseKPerM: 0.0065, exponent: 5.255876 } as const;

/**
 * Pressure at an altitude where no barometer stands, Pa, by the U.S. Standard Atmosphere, 1976 (lowest layer, up to 11 km):
 * p = p0·(1 − L·h/T0)^5.255876. Weather moves the real one by ±3 %. NaN in, NaN out.
 */
export function standardPressurePa(altitudeM: number): number {
  return seaLevel.pressurePa * (1 - (seaLevel.lapseKPerM * altitudeM) / seaLevel.temperatureK) ** seaLevel.exponent;
}

export interface MoundAir {
  readonly temperatureC: number;
  /** 0 dry, 1 saturated. */
  readonly relativeHumidity: number;
  /** What a barometer on the mound shows, not a pressure reduced to sea level as forecasts give it. */
  readonly pressurePa?: number;
  /** Used where no pressure is given; sea level when absent. */
  readonly altitudeM?: number;
}

/** Density of the air on a mound, kg/m³: the measured pressure where there is one, the standard one of the altitude where not. */
export function airDensityAt({ temperatureC, relativeHumidity, pressurePa, altitudeM = 0 }: MoundAir): number {
  return airDensityKgM3({ temperatureC, relativeHumidity, pressurePa: pressurePa ?? standardPressurePa(altitudeM) });
}

/** Air where nothing else is known: 20 °C, 101325 Pa, 50 % humidity. */
export const standardAirDensityKgM3 = airDensityKgM3({ temperatureC: 20, pressurePa: 101325, relativeHumidity: 0.5 });
