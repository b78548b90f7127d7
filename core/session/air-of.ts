import type { MoundAir } from '../facts/air-says.ts';
import { airDensityAt, standardAirDensityKgM3 } from '../flight/air.ts';
import type { Vector } from '../flight/vector.ts';

/** The air that a throw flew through. */
export interface FlownAir {
  readonly airDensityKgM3: number;
  /** Absent where it is still, or where nobody knows. */
  readonly windMps?: Vector;
}

/** What was said of a mound's air, as flights need it; standard air where nobody said anything. */
export function airOf(air: MoundAir | null): FlownAir {
  if (air === null) return { airDensityKgM3: standardAirDensityKgM3 };
  const { temperatureC, relativeHumidity, height } = air;
  const airDensityKgM3 = airDensityAt({ temperatureC, relativeHumidity, ...(height.kind === 'pressure' ? { pressurePa: height.pressurePa } : { altitudeM: height.altitudeM }) });
  const wind = knownWind(air);
  return wind === null ? { airDensityKgM3 } : { airDensityKgM3, windMps: [wind.towardsRightMps, -wind.towardsPlateMps, 0] };
}

/** The wind that throws are flown in; null indoors and where it is not known. */
export function knownWind({ where, wind }: MoundAir): MoundAir['wind'] {
  return where === 'indoors' ? null : wind;
}
