import type { Hello, ThrowBody } from '../core/facts/frames.ts';
import type { Random } from './random.ts';
import type { ThrownBall } from './throw.ts';

/** What a device says about itself in its hello; its id there also names the mound, since every mound has its own. */
type Declaration = Pick<Hello, 'device' | 'sight' | 'axis' | 'units'> & Required<Pick<Hello, 'standardErrors'>>;

/** One kind of device: what it declares, and what it makes of a throw with the errors it declares. */
export interface SimulatedDevice {
  readonly declares: Declaration;
  /** In the declared units, with noise from `random`. Null when the device loses the ball. */
  measure(thrown: ThrownBall, random: Random): ThrowBody | null;
}
