import { STALE_AFTER_SECONDS } from '../../core/facts/heartbeat.ts';
import type { DeviceState } from '../../core/facts/wire.ts';
import type { Clock } from '../clock.ts';
import { Silence } from '../silence.ts';

/** Which device is heard on which mound: fresh, stale or unknown, by whatever a device sends and never by its throws alone. */
export interface Presence {
  heard(mound: string, device: string): void;
  stateOf(mound: string): DeviceState;
  mounds(): string[];
  /** Calls with the mound at each change of verdict or device. Returns what ends it. */
  onChange(listener: (mound: string) => void): () => void;
  close(): void;
}

interface Heard {
  readonly device: string;
  readonly freshSinceMs: number;
  lastMs: number;
  fresh: boolean;
  readonly silence: Silence;
}

export function keepPresence(clock: Clock): Presence {
  const known = new Map<string, Heard>();
  const listeners = new Set<(mound: string) => void>();
  const tell = (mound: string): void => listeners.forEach((listener) => listener(mound));

  return {
    heard(mound, device) {
      const before = known.get(mound);
      const nowMs = clock.nowMs();
      if (before?.fresh === true && before.device === device) {
        before.lastMs = nowMs;
        before.silence.heard(nowMs);
        return;
      }
      before?.silence.end();
      const silence = new Silence(clock, STALE_AFTER_SECONDS * 1000, () => {
        heard.fresh = false;
        tell(mound);
      });
      const heard: Heard = { device, freshSinceMs: nowMs, lastMs: nowMs, fresh: true, silence };
      known.set(mound, heard);
      tell(mound);
    },
    stateOf(mound) {
      const heard = known.get(mound);
      if (heard === undefined) return { verdict: 'unknown' };
      return heard.fresh
        ? { verdict: 'fresh', device: heard.device, sinceMs: heard.freshSinceMs }
        : { verdict: 'stale', device: heard.device, sinceMs: heard.lastMs };
    },
    mounds: () => [...known.keys()],
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      for (const { silence } of known.values()) silence.end();
      listeners.clear();
    },
  };
}
