import { setImmediate } from 'node:timers/promises';
import type { FactLog } from './log/fact-log.ts';

/** Facts read at once: whatever else the program does comes in between. */
const PAGE = 100;

/**
 * Reads facts that a start did not need, because what they say was kept: one that was damaged since is met, and reported, now
 * rather than when somebody asks for it.
 * @param through by mound, up to which place
 */
export async function lookThrough(log: FactLog, through: ReadonlyMap<string, number>, goesOn: () => boolean): Promise<void> {
  for (const [mound, last] of through) {
    for (let after = 0; after < last; after += PAGE) {
      if (!goesOn()) return;
      for (const _ of log.read(mound, after, Math.min(after + PAGE, last)));
      // oxlint-disable-next-line no-await-in-loop -- that is what it is for
      await setImmediate();
    }
  }
}
