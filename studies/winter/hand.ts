import { degToRad, mphToMps } from '../../core/units/convert.ts';
import type { PitchShape, Spread } from '../../simulators/athlete.ts';

/** How one pitch leaves one hand, in the units of the trade and a right-hander's terms. */
export interface Hand {
  readonly mph: number;
  readonly rpm: number;
  /** From 12:00 towards the arm side. */
  readonly tiltDeg: number;
  readonly efficiency: number;
  readonly seam: { readonly armSide: number; readonly vertical: number; readonly scatter: number };
  readonly scatter: { readonly mph: number; readonly rpm: number; readonly tiltDeg: number; readonly efficiency: number };
}

/** What a grip, a cue or a day changes of it. */
export interface Change {
  readonly turnDeg: number;
  /** Added to the spin, as a share of it. */
  readonly rpmShare: number;
  /** Factor on everything that scatters from throw to throw. */
  readonly scatter: number;
  readonly seamArmSide: number;
  readonly seamVertical: number;
}

export const NO_CHANGE: Change = { turnDeg: 0, rpmShare: 0, scatter: 1, seamArmSide: 0, seamVertical: 0 };

export function changed(hand: Hand, by: Change): Hand {
  const { seam, scatter } = hand;
  return {
    ...hand,
    rpm: hand.rpm * (1 + by.rpmShare),
    tiltDeg: hand.tiltDeg + by.turnDeg,
    seam: { armSide: seam.armSide + by.seamArmSide, vertical: seam.vertical + by.seamVertical, scatter: seam.scatter * by.scatter },
    scatter: { mph: scatter.mph * by.scatter, rpm: scatter.rpm * by.scatter, tiltDeg: scatter.tiltDeg * by.scatter, efficiency: scatter.efficiency * by.scatter },
  };
}

/** The same in the terms of the simulators, which throw it. */
export function shapeOf({ mph, rpm, tiltDeg, efficiency, seam, scatter }: Hand): PitchShape {
  const spread = (mean: number, sd: number): Spread => ({ mean, sd });
  return {
    speedMps: spread(mphToMps(mph), mphToMps(scatter.mph)),
    spinRpm: spread(rpm, scatter.rpm),
    tiltRad: spread(degToRad(tiltDeg), degToRad(scatter.tiltDeg)),
    efficiency: spread(efficiency, scatter.efficiency),
    correlations: { speedSpin: 0.3, tiltEfficiency: -0.3 },
    unexplained: { armSide: spread(seam.armSide, seam.scatter), vertical: spread(seam.vertical, seam.scatter) },
  };
}
