import type { GapView, Missing } from '../facts/views.ts';
import { aimedAt } from '../flight/aim.ts';
import { plate } from '../flight/ball.ts';
import { stateAtY, type ConstantAcceleration } from '../flight/constant-acceleration.ts';
import { apartAtDecision, type DecisionSetting } from '../flight/decision-point.ts';
import { gapLine } from '../flight/gap-line.ts';

/** Moments on the line of a view: a throw carries them to every screen, and a screen cannot show more. */
const LINE_STEPS = 20;

/**
 * What the batter has of a throw: the fastball baseline is aimed at the throw's plate place, both leave the hand at the same moment, and
 * the gap between them is told along the way. Before rounding. `problem` where the two do not both fly to the plate, or the
 * fastball takes less time than a decision.
 * @param thrown from the release to the plate, in the same terms as `fastball`
 * @param setting where the gap at the decision point is told; line and plate are at the same time whatever its basis
 */
export function gapBetween(thrown: ConstantAcceleration, fastball: ConstantAcceleration, setting?: DecisionSetting): GapView | Missing {
  const arrival = stateAtY(thrown, plate.frontYM);
  const aimed = arrival && aimedAt(fastball, { xM: arrival.positionM[0], zM: arrival.positionM[2] });
  const aimedArrival = aimed && stateAtY(aimed, plate.frontYM);
  const decision = aimed && apartAtDecision(thrown, aimed, setting);
  const line = aimed && gapLine(thrown, aimed, LINE_STEPS);
  if (arrival === null || aimedArrival === null || decision === null || line === null) return 'problem';
  return {
    aimedArrivalS: arrival.timeS - aimedArrival.timeS,
    decisionS: decision.timeS,
    decisionBeforeS: decision.beforeS,
    decisionBasis: decision.basis,
    decisionWidths: decision.widths,
    plateWidths: line.atPlate.widths,
    lineStepS: line.stepS,
    lineWidths: line.apart.map(({ widths }) => widths),
  };
}
