import type { FamilyAdvice } from '../../core/coaching/families.ts';
import type { Missing, MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import type { Family } from '../../core/facts/vocabulary.ts';
import { familyEvidence, type FamilyEvidence } from '../../core/session/family-evidence.ts';
import { soundThrows } from '../reach/sound-throws.ts';

/** What the throws of this session's stage, and the days before, say about the families. */
export interface PlanEvidence extends FamilyEvidence {
  /** Why the movement of this stage's fastballs is not known; null where it is, or where none was thrown. */
  readonly noMovement: Missing | null;
  /** The efficiency of some of its fastballs was worked out from their path or told by a device that does so. */
  readonly efficiencyInferred: boolean;
}

export function evidenceOf(view: MoundView, session: SessionView): PlanEvidence {
  const fastballs = soundThrows(view, session).filter(({ fastball }) => fastball);
  return { ...familyEvidence(view, session), noMovement: movementMissing(fastballs), efficiencyInferred: fastballs.some(({ spinFrom }) => spinFrom === 'inferred') };
}

function movementMissing(fastballs: readonly ThrowView[]): Missing | null {
  for (const { verticalM, armSideM } of fastballs) {
    if (typeof verticalM !== 'number') return verticalM;
    if (typeof armSideM !== 'number') return armSideM;
  }
  return null;
}

/** The family that the screen opens with: that of the present trial, else the one that fits best. */
export function familyToOpen({ ranking }: FamilyAdvice, { trial }: SessionView): Family {
  return trial?.family ?? ranking[0]!.family;
}
