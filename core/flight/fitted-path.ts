import type { ConstantAcceleration, PathState } from './constant-acceleration.ts';
import type { Forces, SeamCoefficient } from './motion.ts';
import type { Vector } from './vector.ts';

/** What samples say of a flight. `release` and `arrival` lie on the planes asked for; times count from release unless said otherwise. */
export interface FittedPath {
  readonly kind: 'path';
  readonly release: PathState;
  readonly arrival: PathState;
  /** Where the ball is and how fast, from release to arrival; a RangeError outside. */
  at(timeS: number): PathState;
  /** The clock of the samples at release. */
  readonly startTimeS: number;
  /** Constant acceleration with the place and velocity of the release and the place of the arrival. */
  readonly path: ConstantAcceleration;
  /** The constant acceleration that touches the flight at its middle, told from release: the one for `transverseCoefficients`, whose spin the other would put 2–3 % too high. */
  readonly midFlight: ConstantAcceleration;
  /** Induced break, drag kept, release to arrival, in the convention of `inducedBreak`. */
  readonly breaks: {
    readonly verticalM: number;
    readonly horizontalM: number;
    /** m², vertical first. */
    readonly covariance: readonly [readonly [number, number], readonly [number, number]];
  };
  readonly dragCoefficient: number;
  /** In the middle of the samples, by the law that was fitted with. */
  readonly liftCoefficient: number;
  /** The spin across the flight that explains the push of the air by that law; the measured one where the fit was given a spin. */
  readonly transverseSpinRadps: Vector;
  /** The forces of this flight, for flying it again: with `release` and `spinRadps` they give the flight that was fitted. */
  readonly forces: Forces;
  /** The whole spin that was flown with, along the flight and across it. */
  readonly spinRadps: Vector;
  /** The push that a given spin leaves over; null where no spin was given, since the path alone cannot tell the two apart. */
  readonly seamCoefficient: SeamCoefficient | null;
  readonly errors: PathErrors;
  /** Standard deviation of one sample, by axis. */
  readonly noiseM: Vector;
  /** Root mean square distance of the kept samples from the path, all three axes together. */
  readonly residualRmsM: number;
  /** Indexes of samples that were misreads. */
  readonly rejected: readonly number[];
}

/** Standard errors from the scatter of the samples alone: what the laws of lift leave open is not in them. */
export interface PathErrors {
  /** Nothing along y, where the plane is given. */
  readonly releaseM: Vector;
  readonly releaseVelocityMps: Vector;
  readonly releaseSpeedMps: number;
  readonly verticalM: number;
  readonly horizontalM: number;
  readonly arrivalM: Vector;
  readonly arrivalSpeedMps: number;
  readonly flightTimeS: number;
  readonly verticalApproachRad: number;
  readonly horizontalApproachRad: number;
  readonly dragCoefficient: number;
  readonly liftCoefficient: number;
  /** Of the length of `transverseSpinRadps`; 0 where the spin was given. */
  readonly transverseSpinRadps: number;
  /** 0 where no spin was given. */
  readonly seamCoefficient: SeamCoefficient;
}

export interface PathProblem {
  readonly kind: 'problem';
  readonly code: 'too-short' | 'too-noisy' | 'impossible';
  readonly sentence: string;
}
