const TURN = 2 * Math.PI;

/** Under this resultant length there is no axis to speak of: say "axis too scattered" and give no mean. House rule. */
export const TOO_SCATTERED_BELOW = 0.75;

/** Below it the directions cancel and what is left is rounding. */
const NO_DIRECTION = 1e-12;

export interface CircularMean {
  readonly count: number;
  /** In (−π, π]; null without angles and when they cancel. */
  readonly meanRad: number | null;
  /** 1 when all angles agree, 0 when they cancel or there are none. */
  readonly resultantLength: number;
}

/** The same direction in (−π, π]. */
export function wrapRad(angleRad: number): number {
  const wrapped = angleRad - TURN * Math.round(angleRad / TURN);
  return wrapped <= -Math.PI ? wrapped + TURN : wrapped;
}

/** Direction and length of the mean unit vector (Zar, Biostatistical Analysis, ch. 26; Fisher, Statistical Analysis of Circular Data, 1993). */
export function circularMean(anglesRad: readonly number[]): CircularMean {
  const count = anglesRad.length;
  if (count === 0) return { count, meanRad: null, resultantLength: 0 };
  let [east, north] = [0, 0];
  for (const angleRad of anglesRad) {
    east += Math.cos(angleRad);
    north += Math.sin(angleRad);
  }
  const resultantLength = Math.min(1, Math.hypot(east, north) / count);
  const meanRad = resultantLength < NO_DIRECTION ? null : wrapRad(Math.atan2(north, east));
  return { count, meanRad, resultantLength };
}

/** Each angle minus the mean, the short way round: in (−π, π], where the ordinary rules for few values hold. */
export const deviationsRad = (anglesRad: readonly number[], meanRad: number): number[] =>
  anglesRad.map((angleRad) => wrapRad(angleRad - meanRad));

/** Angular deviation √(2(1 − r)), at most √2 (Zar, ch. 26). */
export const angularDeviationRad = (resultantLength: number): number => Math.sqrt(2 * (1 - resultantLength));

/** Circular standard deviation √(−2 ln r), infinite at r = 0 (Zar, ch. 26). */
export const circularSdRad = (resultantLength: number): number => Math.sqrt(Math.max(0, -2 * Math.log(resultantLength)));
