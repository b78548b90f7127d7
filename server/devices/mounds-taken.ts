import type { Hello } from '../../core/facts/frames.ts';
import type { Wire } from './wire.ts';
import type { Presence } from './presence.ts';

/** Closing code for a connection whose place another connection of its device, or another device, has taken. */
const TAKEN_OVER = 4001;

/**
 * One device a mound and one connection a device. The newer connection of a device wins, because the older one is most
 * often dead without knowing; another device gets the mound only when the first has left it or has fallen silent.
 */
export function moundsTaken(presence: Presence): {
  /** Lets a device onto its mound, or gives the reason why not. */
  admit(hello: Hello, wire: Wire): string | null;
  leave(wire: Wire): void;
} {
  const standing = new Map<Wire, { readonly device: string; readonly mound: string }>();

  return {
    admit({ device, mound }, wire) {
      const state = presence.stateOf(mound);
      for (const other of standing.values()) {
        if (other.mound === mound && other.device !== device && state.verdict === 'fresh' && state.device === other.device) {
          return `The device ${other.device} is on mound ${mound}; stop it or choose another mound, then say hello again.`;
        }
      }
      for (const [old, other] of [...standing]) {
        if (other.device !== device && other.mound !== mound) continue;
        standing.delete(old);
        old.close(TAKEN_OVER, 'another connection has taken over');
      }
      standing.set(wire, { device, mound });
      return null;
    },
    leave: (wire) => void standing.delete(wire),
  };
}
