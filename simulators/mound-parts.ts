import type { Clock } from '../device/clock.ts';
import type { Tablet } from './coach.ts';
import type { Options } from './options.ts';

/** What a simulated mound is made of. */
export interface MoundParts {
  readonly options: Options;
  readonly token: string;
  /** New for every start: begins the ids of runs, sessions and requests. */
  readonly name: string;
  readonly timeZone: string;
  readonly clock: Clock;
  readonly tablet: Tablet;
  readonly print: (line: string) => void;
  readonly stop: AbortSignal;
}
