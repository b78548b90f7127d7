import { gapBetween } from '../coaching/gap.ts';
import type { GapView, Missing } from '../facts/views.ts';
import type { ConstantAcceleration } from '../flight/constant-acceleration.ts';
import type { DecisionSetting } from '../flight/decision-point.ts';

type KnownPath = ConstantAcceleration | Missing;

interface Remembered {
  readonly fastball: ConstantAcceleration;
  readonly decision: DecisionSetting;
  readonly gap: GapView | Missing;
}

/** The gap of a throw, with what it was told against: views are made anew at every throw, fastballs and decision points seldom change. */
const remembered = new WeakMap<ConstantAcceleration, Remembered>();

/** What the batter has of a throw against a fastball baseline, told where the session wants it; what either lacks stays lacking, with its reason. */
export function gapOf(thrown: KnownPath, fastball: KnownPath, decision: DecisionSetting): GapView | Missing {
  if (typeof thrown === 'string') return thrown;
  if (typeof fastball === 'string') return fastball;
  const known = remembered.get(thrown);
  if (known !== undefined && alike(known.fastball, fastball) && sameDecision(known.decision, decision)) return known.gap;
  const gap = gapBetween(thrown, fastball, decision);
  remembered.set(thrown, { fastball, decision, gap });
  return gap;
}

function sameDecision(one: DecisionSetting, other: DecisionSetting): boolean {
  return one.beforeS === other.beforeS && one.basis === other.basis;
}

function alike(one: ConstantAcceleration, other: ConstantAcceleration): boolean {
  return one === other || [0, 1, 2].every((axis) =>
    one.positionM[axis] === other.positionM[axis] && one.velocityMps[axis] === other.velocityMps[axis] && one.accelerationMps2[axis] === other.accelerationMps2[axis]);
}
