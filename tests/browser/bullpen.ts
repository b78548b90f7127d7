import { DEFAULT_DISTANCE_M, type Hand } from '../../core/facts/vocabulary.ts';
import { randomFrom } from '../../simulators/random.ts';
import { flownBy, frameOf, type Habit } from '../parity/flown.ts';
import { counted, type TestDevice } from './device.ts';

/** Throws so many of a habit from a mound, one after the other, each stored before the next is let go. */
export type Throwing = (hand: Hand, habit: Habit, times: number) => Promise<void>;

/** Every throw is flown by core's own aerodynamics and sent as a camera sees it: a path, and the spin axis. The seed repeats them. */
export function throwingAt(device: TestDevice, seed: number): Throwing {
  const chance = randomFrom(seed, 'bullpen');
  const throws = counted(device);
  return async (hand, habit, times) => {
    for (let thrown = 0; thrown < times; thrown += 1) {
      // oxlint-disable-next-line no-await-in-loop -- a mound has one ball in the air
      await throws(frameOf(flownBy(habit, hand, DEFAULT_DISTANCE_M.mound, chance), 'path', chance));
    }
  };
}
