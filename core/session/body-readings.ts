import type { BodyReadings } from '../coaching/honest-arm.ts';
import { bodyToSi } from '../facts/si.ts';
import type { Reading, ThrowView } from '../facts/views.ts';
import type { ThrowEntry } from './ledger.ts';

/** What one throw tells about the body that threw it. A stage without a release height has none. */
export function bodyReadings(entry: ThrowEntry, { extensionM, releaseHeightM, releaseArmSideM }: Pick<ThrowView, 'extensionM' | 'releaseHeightM' | 'releaseArmSideM'>): BodyReadings {
  const { armSpeedMps, deliveryDurationS } = bodyToSi(entry.body, entry.source.units);
  return { armSpeedMps, deliveryDurationS, extensionM: known(extensionM), releaseHeightM: known(releaseHeightM), releaseArmSideM: known(releaseArmSideM) };
}

function known(reading: Reading): number | null {
  return typeof reading === 'number' ? reading : null;
}
