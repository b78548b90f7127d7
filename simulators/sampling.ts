import type { PitchShape, Spread } from './athlete.ts';
import type { Random } from './random.ts';

const FARTHEST_SD = 3;

/** One draw; people do not throw beyond three standard deviations, they would stop and laugh. */
export function draw(spread: Spread, random: Random, scatter = 1): number {
  return at(spread, random.normal(), scatter);
}

function at({ mean, sd }: Spread, deviation: number, scatter: number): number {
  return mean + sd * scatter * Math.min(FARTHEST_SD, Math.max(-FARTHEST_SD, deviation));
}

/** What one throw has of its shape. */
export interface DrawnShape {
  readonly speedMps: number;
  readonly spinRpm: number;
  readonly tiltRad: number;
  readonly efficiency: number;
  readonly unexplained: { readonly armSide: number; readonly vertical: number };
}

/** Speed goes with spin and tilt with efficiency as the shape says. Always the same number of draws. `scatter` widens all of it. */
export function drawShape(shape: PitchShape, random: Random, scatter: number): DrawnShape {
  const [speed, spin] = correlated(shape.correlations.speedSpin, random);
  const [tilt, efficiency] = correlated(shape.correlations.tiltEfficiency, random);
  return {
    speedMps: at(shape.speedMps, speed, scatter),
    spinRpm: Math.max(100, at(shape.spinRpm, spin, scatter)),
    tiltRad: at(shape.tiltRad, tilt, scatter),
    efficiency: Math.min(0.999, Math.max(0.02, at(shape.efficiency, efficiency, scatter))),
    unexplained: {
      armSide: draw(shape.unexplained.armSide, random, scatter),
      vertical: draw(shape.unexplained.vertical, random, scatter),
    },
  };
}

function correlated(correlation: number, random: Random): [number, number] {
  const first = random.normal();
  return [first, correlation * first + Math.sqrt(1 - correlation * correlation) * random.normal()];
}

/** The middle of a shape: the throw that the athlete has in mind when aiming. */
export function middleOf(shape: PitchShape): DrawnShape {
  return {
    speedMps: shape.speedMps.mean,
    spinRpm: shape.spinRpm.mean,
    tiltRad: shape.tiltRad.mean,
    efficiency: shape.efficiency.mean,
    unexplained: { armSide: shape.unexplained.armSide.mean, vertical: shape.unexplained.vertical.mean },
  };
}
