import { plate } from './ball.ts';
import { stateAtTime, stateAtY, timeAtY, type ConstantAcceleration } from './constant-acceleration.ts';
import { apartOf, type Apart } from './gap-line.ts';

/** `same-time` is what the batter sees; `same-distance` compares where both pass the same point of the way. They differ by inches. */
type DecisionBasis = 'same-time' | 'same-distance';

export interface DecisionSetting {
  /** Before the fastball arrives at the plate. */
  readonly beforeS: number;
  readonly basis: DecisionBasis;
}

/**
 * When a batter has to have decided: the swing itself takes about 150 ms (Adair, The Physics of Baseball, 2002), and a little goes
 * to starting it. A setting, because nobody knows it of this batter.
 */
export const decisionBeforeS = { least: 0.15, usual: 0.175, most: 0.225 } as const;
export const usualDecision: DecisionSetting = { beforeS: decisionBeforeS.usual, basis: 'same-time' };

export interface AtDecision extends Apart, DecisionSetting {
  /** From release. */
  readonly timeS: number;
  /** From the fastball to the front of the plate. */
  readonly fastballToPlateM: number;
}

/**
 * How far a throw is from the fastball aimed at the same place at the decision point. Null when either does not arrive, or when the
 * fastball takes less than the time before its arrival that is asked for.
 */
export function apartAtDecision(
  thrown: ConstantAcceleration,
  fastball: ConstantAcceleration,
  { beforeS, basis }: DecisionSetting = usualDecision,
  plateYM: number = plate.frontYM,
): AtDecision | null {
  const arrivalS = timeAtY(fastball, plateYM);
  if (arrivalS === null || timeAtY(thrown, plateYM) === null || !(arrivalS >= beforeS)) return null;
  const timeS = arrivalS - beforeS;
  const there = stateAtTime(fastball, timeS).positionM;
  const here = basis === 'same-time' ? stateAtTime(thrown, timeS) : stateAtY(thrown, there[1]);
  return here === null ? null : { ...apartOf(here.positionM, there), beforeS, basis, timeS, fastballToPlateM: there[1] - plateYM };
}
