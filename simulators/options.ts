import type { SimulatedAthlete } from './athlete.ts';
import type { Fault } from './faults.ts';

export interface Options {
  /** Of the device door. */
  readonly url: string;
  readonly tokenFile: string;
  readonly mound: string;
  /** They come to the mound in this order, again and again. */
  readonly athletes: readonly SimulatedAthlete[];
  readonly seed: number;
  readonly intervalMs: number;
  /** Throws after which the simulator ends; null: never. */
  readonly count: number | null;
  readonly faults: readonly Fault[];
  readonly coach: boolean;
}
