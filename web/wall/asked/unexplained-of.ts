import type { SeparationView, UnexplainedReading, UnexplainedView } from '../../../core/facts/views.ts';
import { chiSquare2Quantile } from '../../../core/statistics/closed-quantiles.ts';
import { longAxisRad, principalVariances, type Covaried } from '../../../core/statistics/ellipse.ts';
import type { PlaneUnexplained } from '../../charts/plane-data.ts';
import type { TurnedEllipse } from '../../charts/turned-ellipse.ts';
import { movementIn, numberText, MOVEMENT_UNIT } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';

/** Of a movement in m²: vertical, both, arm side. */
type MovementCovariance = UnexplainedView['model'];
/** What is drawn and said of it. */
export type UnexplainedSeen = Pick<UnexplainedView, 'verticalM' | 'armSideM' | 'measurement' | 'model'>;

const SHARE = 0.95;
/** Standard errors to either side of a 95 % interval of one number. */
const EITHER_SIDE = 1.96;

/** The arrow on the separation plane: from where spin alone would have taken the throw. Null without a place on the plane. */
export function arrowOf(unexplained: UnexplainedSeen, separation: SeparationView | null, words: readonly string[]): PlaneUnexplained | null {
  if (separation === null || typeof separation.verticalM !== 'number' || typeof separation.armSideM !== 'number') return null;
  const to = { verticalM: separation.verticalM, armSideM: separation.armSideM };
  const sum = sumOf(unexplained);
  return {
    from: { verticalM: to.verticalM - unexplained.verticalM, armSideM: to.armSideM - unexplained.armSideM },
    to,
    ellipse: sum === null ? null : ellipse95(sum),
    words,
  };
}

/** Its length with its uncertainty, or why there is none: "3.3 ± 1.2 in unexplained", "3.3 ± ? in unexplained" where nobody knows how sure it is. */
export function unexplainedWords(reading: UnexplainedReading, speech: Speech): string {
  const say = speech.words.asked.seamMap;
  if (reading.kind !== 'unexplained') return say.unexplainedMissing(speech.words.measures.missing[reading.kind]);
  const length = Math.hypot(reading.verticalM, reading.armSideM);
  const sum = sumOf(reading);
  const either = sum === null ? null : EITHER_SIDE * Math.sqrt(varianceAlong(sum, reading));
  const [amount, doubt] = [length, either].map((metres) => (metres === null ? '?' : numberText(movementIn(speech.units, metres), 1, speech.language)));
  return say.unexplained(`${amount} ± ${doubt} ${MOVEMENT_UNIT[speech.units]}`);
}

/** Both parts of the doubt are independent. */
function sumOf({ measurement, model }: UnexplainedSeen): MovementCovariance | null {
  return measurement === null ? null : [measurement[0] + model[0], measurement[1] + model[1], measurement[2] + model[2]];
}

/** Variance of the length: along the vector, or along the worst direction where there is no vector to speak of. */
function varianceAlong(covariance: MovementCovariance, { verticalM, armSideM }: UnexplainedSeen): number {
  const length = Math.hypot(verticalM, armSideM);
  if (length === 0) return principalVariances(covaried(covariance)).larger;
  const [up, side] = [verticalM / length, armSideM / length];
  return up * up * covariance[0] + 2 * up * side * covariance[1] + side * side * covariance[2];
}

function covaried([yy, xy, xx]: MovementCovariance): Covaried {
  return { xx, yy, xy };
}

/** The ellipse that holds 95 % of a normal doubt; its angle from the arm-side axis towards up. */
export function ellipse95(covariance: MovementCovariance): TurnedEllipse {
  const squared = chiSquare2Quantile(SHARE);
  const doubt = covaried(covariance);
  const { larger, smaller } = principalVariances(doubt);
  return { semiMajorM: Math.sqrt(squared * larger), semiMinorM: Math.sqrt(squared * Math.max(0, smaller)), angleRad: longAxisRad(doubt) };
}
