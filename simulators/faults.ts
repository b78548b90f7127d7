import type { Random } from './random.ts';

/** What may go wrong between a device and the server, on request. */
export const FAULTS = {
  dropped: 'the connection breaks right after a throw',
  repeated: 'a throw is sent twice',
  late: 'a throw is sent after the one that follows it',
  corrected: 'a throw is sent wrong first and corrected by a later frame',
  misread: 'a throw is sent wrong and stays wrong',
  silent: 'neither throws nor heartbeats for eight seconds',
} as const;

export type Fault = keyof typeof FAULTS;
export const FAULT_NAMES = Object.keys(FAULTS) as readonly Fault[];

const SHARE_OF_THROWS = 1 / 6;

/** The fault that befalls the next throw: one throw in six gets one of those wanted. Always two draws, so that a list of faults changes only which. */
export function faultOfNext(wanted: readonly Fault[], random: Random): Fault | null {
  const struck = random.uniform() < SHARE_OF_THROWS;
  const which = random.uniform();
  return struck && wanted.length > 0 ? wanted[Math.floor(which * wanted.length)]! : null;
}
