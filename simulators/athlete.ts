import type { Athlete, Cue, Grip, SpeedBand, TargetZone } from '../core/facts/coach.ts';

/** A normal distribution, cut at three standard deviations. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
}

/** How one kind of throw leaves the hand, in the terms of a right-hander; a left-hander's launch is mirrored at the end. */
export interface PitchShape {
  readonly speedMps: Spread;
  readonly spinRpm: Spread;
  /** Clock that the pitcher sees, 0 = 12:00, π/2 = 3:00 = arm side. */
  readonly tiltRad: Spread;
  readonly efficiency: Spread;
  readonly correlations: { readonly speedSpin: number; readonly tiltEfficiency: number };
  /** Force across the flight that spin does not explain, as a coefficient; 0.01 is about 0.93 in over a pitch. Up and arm side are positive. */
  readonly unexplained: { readonly armSide: Spread; readonly vertical: Spread };
  /** Where the spin axis leaves the ball on the map of the seams, degrees; left out where it is anywhere. */
  readonly seamAxis?: { readonly latitude: number; readonly longitude: number };
}

type DeviceName = 'path' | 'constant' | 'spin';

/** A grip that the athlete tries, with the words the coach gives. */
interface TriedGrip {
  readonly grip: Grip;
  readonly cue: Cue;
}

/** A set of distributions that throws like a person. All of them are invented. */
export interface SimulatedAthlete {
  readonly profile: Athlete;
  readonly family: 'turnover' | 'seam-effect' | 'split';
  /** The device that watches this athlete. */
  readonly device: DeviceName;
  readonly release: { readonly armSideM: Spread; readonly heightM: Spread; readonly extensionM: Spread };
  /** Standard deviation of the direction of the throw, up and sideways each. */
  readonly commandRad: number;
  readonly fastball: PitchShape;
  /** With the plainest grip: two seams, thumb under the ball, nothing special. */
  readonly changeup: PitchShape;
  readonly fatigue: {
    /** Share of speed lost with each throw. */
    readonly speedPerThrow: number;
    /** Share by which every scatter grows with each throw. */
    readonly scatterPerThrow: number;
  };
  /** A slow wandering, a little each throw, that pulls back towards the middle. */
  readonly drift: { readonly tiltRad: number; readonly heightM: number; readonly pull: number };
  /** Trial A and trial B. */
  readonly tried: readonly [TriedGrip, TriedGrip];
  readonly target: { readonly zone: TargetZone; readonly speedBand: SpeedBand };
}
