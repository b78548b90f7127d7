import type { SimulatedAthlete } from './athlete.ts';
import { constantDevice } from './device-constant.ts';
import { pathDevice } from './device-path.ts';
import { spinDevice } from './device-spin.ts';
import type { SimulatedDevice } from './measuring.ts';

const DEVICES: Readonly<Record<SimulatedAthlete['device'], SimulatedDevice>> = { path: pathDevice, constant: constantDevice, spin: spinDevice };

/** The device that stands before this athlete. */
export function deviceBefore(athlete: SimulatedAthlete): SimulatedDevice {
  return DEVICES[athlete.device];
}
